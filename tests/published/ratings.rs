//! Rating scales.

use holdfast_core::load::{Reserve, SessionRating, SetRating};

/// P: Zourdos et al., J Strength Cond Res 2016;30(1):267-275: 10 is no rep in reserve, 9 is one, "and
/// so forth". S: 8 and 7, and 5 to 6 as 4 to 6 reps (J Hum Kinet 2024;91:87-103, table 1). M: halves.
#[test]
fn reps_in_reserve_of_a_rating() {
    let reserve = |rating| SetRating::new(rating).unwrap().reserve();
    for (rating, reps) in [(10.0, 0), (9.0, 1), (8.0, 2), (7.0, 3)] {
        assert_eq!(reserve(rating), Reserve::Exactly { reps });
        assert_eq!(SetRating::for_reserve(reps).unwrap().number(), rating);
    }
    assert_eq!(reserve(9.5), Reserve::NoRepMoreLoad);
    assert_eq!(reserve(8.5), Reserve::Between { fewest: 1, most: 2 });
    assert_eq!(reserve(7.5), Reserve::Between { fewest: 2, most: 3 });
    for rating in [5.0, 6.0] {
        assert_eq!(reserve(rating), Reserve::Between { fewest: 4, most: 6 });
    }
    for rating in [1.0, 2.0, 3.0, 4.0] {
        assert_eq!(reserve(rating), Reserve::Uncounted);
    }
}

/// P: the modified CR-10 scale of Foster's group, J Sports Sci Med 2006;5:289, table 1: words beside 0
/// to 5, 7 and 10, none beside 6, 8 and 9.
#[test]
fn words_beside_the_session_scale() {
    let anchor = |rating| SessionRating::new(rating).unwrap().anchor();
    let bare: Vec<u32> = (0..=10).filter(|rating| anchor(*rating).is_none()).collect();
    assert_eq!(bare, [6, 8, 9]);
    let words = [(0, "rest"), (3, "moderate"), (5, "hard"), (7, "very hard"), (10, "maximal")];
    for (rating, word) in words {
        assert_eq!(anchor(rating), Some(word));
    }
}

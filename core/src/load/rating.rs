//! Rating scales: how hard a set was, and how hard a session was.

/// Why a number is no rating.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum RatingError {
    /// Not on the scale of sets.
    #[error("a set is rated 1 to 10 in whole numbers, or 7.5, 8.5 or 9.5")]
    Set,
    /// Not on the scale of sessions.
    #[error("a session is rated 0 to 10 in whole numbers")]
    Session,
}

/// How hard a set was, by the reps that were left: the rating of perceived exertion of Zourdos et
/// al., J Strength Cond Res 2016;30:267-275. Whole numbers 1 to 10, and 7.5, 8.5 and 9.5 (the
/// halves are from memory).
///
/// How well people judge it: off by about one rep with up to five reps left and by more than two
/// with seven to ten left (Hackett et al., J Strength Cond Res 2017;31:2162-2168).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SetRating {
    halves: u32,
}

/// What a [`SetRating`] says about reps in reserve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reserve {
    /// Just so many reps were left.
    Exactly {
        /// How many.
        reps: u32,
    },
    /// So many reps, or a few more, were left.
    Between {
        /// The fewest.
        fewest: u32,
        /// The most.
        most: u32,
    },
    /// No rep was left, but a little more load would have gone.
    NoRepMoreLoad,
    /// Easy: the scale counts no reps.
    Uncounted,
}

impl SetRating {
    /// Takes a number for a rating.
    ///
    /// # Errors
    /// [`RatingError::Set`] for what is not on the scale: 0, 11, 6.5, 7.25, anything not a number.
    pub fn new(rating: f64) -> Result<SetRating, RatingError> {
        let halves = (2..=20).find(|halves| rating * 2.0 == f64::from(*halves));
        halves
            .filter(|halves| halves % 2 == 0 || *halves > 14)
            .map(|halves| SetRating { halves })
            .ok_or(RatingError::Set)
    }

    /// The rating that says just `reps` were left: 10 less that, for 0 to 3 reps. None beyond, where
    /// the scale gives only ranges.
    pub fn for_reserve(reps: u32) -> Option<SetRating> {
        (reps <= 3).then(|| SetRating { halves: 20 - 2 * reps })
    }

    /// The number, 1 to 10.
    pub fn number(self) -> f64 {
        f64::from(self.halves) / 2.0
    }

    /// The reps in reserve. Ten less the rating, exactly, only for 7, 8, 9 and 10; 5 and 6 are one
    /// group of 4 to 6 reps (that group: J Hum Kinet 2024;91:87-103, table 1).
    pub fn reserve(self) -> Reserve {
        match self.halves {
            20 | 18 | 16 | 14 => Reserve::Exactly { reps: (20 - self.halves) / 2 },
            19 => Reserve::NoRepMoreLoad,
            17 => Reserve::Between { fewest: 1, most: 2 },
            15 => Reserve::Between { fewest: 2, most: 3 },
            10 | 12 => Reserve::Between { fewest: 4, most: 6 },
            _ => Reserve::Uncounted,
        }
    }
}

/// How hard a whole session was, 0 to 10 on the modified CR-10 scale, asked about half an hour
/// after it (Foster et al., J Strength Cond Res 2001;15:109-115).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SessionRating {
    rating: u32,
}

impl SessionRating {
    /// Takes a number for a rating.
    ///
    /// # Errors
    /// [`RatingError::Session`] above 10.
    pub fn new(rating: u32) -> Result<SessionRating, RatingError> {
        if rating <= 10 { Ok(SessionRating { rating }) } else { Err(RatingError::Session) }
    }

    /// The number, 0 to 10.
    pub fn number(self) -> u32 {
        self.rating
    }

    /// What the scale writes beside the number; nothing beside 6, 8 and 9 (J Sports Sci Med 2006;
    /// 5:289, table 1).
    pub fn anchor(self) -> Option<&'static str> {
        match self.rating {
            0 => Some("rest"),
            1 => Some("very, very easy"),
            2 => Some("easy"),
            3 => Some("moderate"),
            4 => Some("somewhat hard"),
            5 => Some("hard"),
            7 => Some("very hard"),
            10 => Some("maximal"),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_on_a_scale_is_refused() {
        let odd = [0.0, 0.5, 1.5, 5.5, 6.5, 7.25, 10.5, 11.0, -7.0, 1e300, f64::NAN, f64::INFINITY];
        for rating in odd {
            assert_eq!(SetRating::new(rating), Err(RatingError::Set), "{rating}");
        }
        for rating in [11, 100, u32::MAX] {
            assert_eq!(SessionRating::new(rating), Err(RatingError::Session));
        }
        assert_eq!(SetRating::for_reserve(4), None);
        assert_eq!(SetRating::for_reserve(u32::MAX), None);
    }

    #[test]
    fn a_harder_rating_never_leaves_more() {
        let most = |rating: SetRating| match rating.reserve() {
            Reserve::Exactly { reps } => reps * 2,
            Reserve::Between { most, .. } => most * 2,
            Reserve::NoRepMoreLoad => 1,
            Reserve::Uncounted => u32::MAX,
        };
        let all = (0..=40).filter_map(|quarters| SetRating::new(f64::from(quarters) / 4.0).ok());
        let all: Vec<SetRating> = all.collect();
        assert_eq!(all.len(), 13);
        assert!(all.is_sorted_by(|easier, harder| most(*easier) >= most(*harder)));
        assert!(all.is_sorted());
    }
}

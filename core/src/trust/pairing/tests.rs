//! Pairing: what both sides see, what ends it, and somebody in between.

use proptest::prelude::*;

use super::*;
use crate::trust::tests::{device, person, shows};
use crate::trust::{Certificate, WORDS};

fn certificate(number: u8) -> Certificate {
    Certificate::sign(&person(number), &device(number).public(), 1)
}

fn invited() -> Invited {
    Invited::new(certificate(1), [11; 16])
}

fn answered(invitation: Invitation, number: u8) -> Answered {
    Answered::new(None, invitation, certificate(number), "Ana", [number; 16])
}

#[test]
fn both_sides_see_the_same_words() {
    let coach = invited();
    let member = answered(coach.invitation(), 2);
    assert_eq!(coach.take(&[]), Ok(None));
    let opened = coach.take(&[member.reply().clone(), member.reply().clone()]).unwrap().unwrap();
    let compared = member.open(opened.opening()).unwrap();
    assert_eq!(compared.words, opened.words());
    assert_eq!(compared.coach, certificate(1));
    assert_eq!(opened.reply().certificate, certificate(2));
    assert_eq!(opened.take(member.reply()), Ok(()), "the same again");
}

/// Lengths that a QR code of these versions holds at level M (ISO/IEC 18004, table 7, letters and digits): 122 in
/// version 5, 366 in version 11.
#[test]
fn messages_fit_their_codes() {
    let coach = invited();
    let member = answered(coach.invitation(), 2);
    let opened = coach.take(&[member.reply().clone()]).unwrap().unwrap();
    assert_eq!(coach.invitation().bytes().len(), 65);
    assert!(coach.invitation().text().len() <= 122, "{}", coach.invitation().text().len());
    let reply = Reply { name: String::new(), ..member.reply().clone() };
    assert_eq!((reply.bytes().len(), opened.opening().bytes().len()), (212, 211));
    assert!(reply.text().len() <= 366 && opened.opening().text().len() <= 366);
    let long = Reply { name: "ä".repeat(40), ..reply };
    assert_eq!(long.bytes().len(), 292);
    assert_eq!(Reply::read_text(&long.text()), Ok(long.clone()));
    let longer = Reply { name: "ä".repeat(40) + "x", ..long };
    assert_eq!(Reply::read(&longer.bytes()), Err(MessageFault::Form));
}

/// Every state is stored before its message goes out: read back, it says the same again.
#[test]
fn a_kill_after_any_store_goes_on_where_it_was() {
    fn again<T: serde::Serialize + for<'d> serde::Deserialize<'d>>(state: &T) -> T {
        serde_json::from_str(&serde_json::to_string(state).unwrap()).unwrap()
    }
    let coach = invited();
    assert_eq!(again(&coach).invitation(), coach.invitation());
    let member = answered(coach.invitation(), 2);
    // Asked again by the same code, with another nonce drawn, it gives the same answer; by another code another.
    let twice =
        Answered::new(Some(&again(&member)), coach.invitation(), certificate(2), "Ana", [9; 16]);
    assert_eq!(twice, member);
    let other = Invited::new(certificate(1), [12; 16]).invitation();
    assert_ne!(
        Answered::new(Some(&member), other, certificate(2), "Ana", [9; 16]).reply(),
        member.reply()
    );
    let opened = again(&coach).take(&[member.reply().clone()]).unwrap().unwrap();
    assert_eq!(again(&opened), opened);
    assert_eq!(again(&member).open(again(&opened).opening()).unwrap().words, opened.words());
    // Not what was stored.
    let text = serde_json::to_string(&opened).unwrap();
    assert!(serde_json::from_str::<Opened>(&text.replace("HF1:", "HF2:")).is_err());
}

#[test]
fn one_code_has_one_answer_and_one_opening() {
    let coach = invited();
    let (ana, eve) = (answered(coach.invitation(), 2), answered(coach.invitation(), 3));
    let both = [ana.reply().clone(), eve.reply().clone()];
    assert_eq!(coach.take(&both), Err(InvitedFault::TwoAnswered));
    let opened = coach.take(&both[..1]).unwrap().unwrap();
    assert_eq!(opened.take(eve.reply()), Err(InvitedFault::OpenedForAnother));
    // The opening is for Ana's words: Eve's device sees others.
    assert_ne!(eve.open(opened.opening()).unwrap().words, opened.words());
}

/// An opening with another certificate, another nonce, or of another code.
#[test]
fn only_what_was_committed_to_opens() {
    let coach = invited();
    let member = answered(coach.invitation(), 2);
    let good = Opening { certificate: certificate(1), nonce: [11; 16] };
    assert!(member.open(&good).is_ok());
    let another_device = Certificate::sign(&person(1), &device(9).public(), 1);
    let others = [
        Opening { nonce: [12; 16], ..good.clone() },
        Opening { certificate: certificate(3), ..good.clone() },
        Opening { certificate: another_device, ..good.clone() },
    ];
    for other in others {
        assert_eq!(member.open(&other), Err(AnsweredFault::NotTheCode));
    }
    // A code that commits to one device and shows another's key.
    let stolen = Invitation { open: device(9).public().open, ..coach.invitation() };
    assert_eq!(answered(stolen, 2).open(&good), Err(AnsweredFault::NotTheCode));
    // The code of the day before.
    let before = Invited::new(certificate(1), [10; 16]);
    assert_eq!(answered(before.invitation(), 2).open(&good), Err(AnsweredFault::NotTheCode));
}

/// Any one bit of any message turned: it is none, or the words are others.
#[test]
fn every_bit_is_in_the_words() {
    let coach = invited();
    let member = answered(coach.invitation(), 2);
    let opened = coach.take(&[member.reply().clone()]).unwrap().unwrap();
    let (one, two, three) = (coach.invitation(), member.reply(), opened.opening());
    let words = word_numbers(&one, two, three);
    let mut read = 0;
    for (which, bytes) in [one.bytes(), two.bytes(), three.bytes()].into_iter().enumerate() {
        for bit in 0..bytes.len() * 8 {
            let mut turned = bytes.clone();
            turned[bit / 8] ^= 1 << (bit % 8);
            let other = match which {
                0 => Invitation::read(&turned).map(|one| word_numbers(&one, two, three)),
                1 => Reply::read(&turned).map(|two| word_numbers(&one, &two, three)),
                _ => Opening::read(&turned).map(|three| word_numbers(&one, two, &three)),
            };
            if let Ok(other) = other {
                read += 1;
                assert_ne!(other, words, "bit {bit} of message {which}");
            }
        }
    }
    assert!(read > 500, "{read} read");
}

/// Who invites and who answers, and who is called what: the other way round the words are others.
#[test]
fn the_words_say_who_is_who() {
    let words = |coach: u8, member: u8, name: &str| {
        let invited = Invited::new(certificate(coach), [11; 16]);
        let (certificate, nonce) = (certificate(member), [12; 16]);
        let answered = Answered::new(None, invited.invitation(), certificate, name, nonce);
        let opened = invited.take(&[answered.reply().clone()]).unwrap().unwrap();
        word_numbers(&invited.invitation(), answered.reply(), opened.opening())
    };
    let all = [words(1, 2, "Ana"), words(2, 1, "Ana"), words(1, 2, "Ben"), words(2, 1, "Ben")];
    assert_eq!(std::collections::BTreeSet::from(all).len(), all.len(), "{all:?}");
    assert_eq!(words(1, 2, "Ana"), all[0]);
}

/// Before it is opened only the coach knows the nonce.
#[test]
fn what_is_printed_has_no_nonce_in_it() {
    let nonce: [u8; 16] = std::array::from_fn(|at| 200 + at as u8);
    let invited = Invited::new(certificate(1), nonce);
    let reply = answered(invited.invitation(), 2).reply().clone();
    let opened = invited.take(&[reply]).unwrap().unwrap();
    for text in [format!("{invited:?} {invited:#?}"), format!("{opened:?} {opened:#?}")] {
        assert!(text.contains("certificate") && !shows(&text, &nonce), "{text}");
    }
}

/// The coach picks by listening: one of three lines is right, wherever chance puts it, and no word is in two.
#[test]
fn one_line_of_three_is_right() {
    let coach = invited();
    let opened = coach.take(&[answered(coach.invitation(), 2).reply().clone()]).unwrap().unwrap();
    let mut places = [0; 3];
    for seed in 0..=255_u8 {
        let mut chance = [seed; 16];
        chance[3] = seed.wrapping_mul(7);
        let lines = opened.lines(chance);
        let right = lines.iter().position(|line| *line == opened.words()).unwrap();
        places[right] += 1;
        let mut words = lines.concat();
        words.sort_unstable();
        words.dedup();
        let own = std::collections::BTreeSet::from(opened.words()).len();
        assert_eq!(words.len(), 8 + own);
        for line in 0..4 {
            assert_eq!(opened.is_right(chance, Picked::Line(line)), line == right);
        }
        assert!(!opened.is_right(chance, Picked::None));
    }
    assert!(places.iter().all(|place| *place > 60), "{places:?}");
}

/// Somebody in between answers the coach with a key of their own and invites the member with another. They are
/// bound to their invitation before they see the answer, so the words match by chance alone: with 16 bits of them
/// once in 65,536. Sixteen in 2^20 tries are expected, and over 40 as good as never (the normal tail of a count of
/// 16 beyond six deviations). Without the commitment an opening is found for any answer.
#[test]
fn somebody_in_between_has_one_guess() {
    let short = |numbers: [u8; 4]| [numbers[0], numbers[1]];
    let (coach, eve, ana) = (certificate(1), certificate(3), certificate(2));
    let nonce = |number: u32| {
        let mut nonce = [0; 16];
        nonce[..4].copy_from_slice(&number.to_le_bytes());
        nonce
    };
    let mut matched = 0;
    for run in 0..1 << 20 {
        let invited = Invited::new(coach, nonce(run));
        let by_eve = Invited::new(eve, nonce(!run));
        let reply = Reply { certificate: ana, nonce: nonce(run ^ 5), name: String::new() };
        let to_coach = Reply { certificate: eve, nonce: nonce(run ^ 9), name: String::new() };
        let opening = Opening { certificate: coach, nonce: nonce(run) };
        let to_ana = Opening { certificate: eve, nonce: nonce(!run) };
        let seen_by_coach = word_numbers(&invited.invitation(), &to_coach, &opening);
        let seen_by_ana = word_numbers(&by_eve.invitation(), &reply, &to_ana);
        matched += u32::from(short(seen_by_coach) == short(seen_by_ana));
    }
    assert!((1..=40).contains(&matched), "{matched} of 2^20");

    let invitation = Invited::new(eve, [3; 16]).invitation();
    let member = Answered::new(None, invitation, ana, "Ana", [2; 16]);
    let wanted = [77, 78];
    let found = (0..1 << 22).map(|run| Opening { certificate: eve, nonce: nonce(run) });
    let mut found = found.filter(|opening| {
        short(word_numbers(member.invitation(), member.reply(), opening)) == wanted
    });
    let found = found.next().expect("an opening for any words");
    assert_eq!(
        member.open(&found),
        Err(AnsweredFault::NotTheCode),
        "and the commitment refuses it"
    );
}

#[test]
fn what_is_no_code_says_so() {
    let text = invited().invitation().text();
    assert_eq!(Invitation::read_text(&text.to_lowercase()), Ok(invited().invitation()));
    let broken = format!("  {}\n{}\n", &text[..40], &text[40..]);
    assert_eq!(Invitation::read_text(&broken), Ok(invited().invitation()));
    for (text, fault) in [
        ("", MessageFault::Form),
        ("HF1:", MessageFault::Form),
        ("https://example.org", MessageFault::Form),
        (&text[..text.len() - 4], MessageFault::Form),
        (&format!("{text}00"), MessageFault::Form),
    ] {
        assert_eq!(Invitation::read_text(text), Err(fault), "{text}");
    }
    let mut newer = invited().invitation().bytes();
    newer[0] = 2;
    assert_eq!(Invitation::read(&newer), Err(MessageFault::Newer));
    let zero = Invitation { open: [0; 32], ..invited().invitation() };
    assert_eq!(Invitation::read(&zero.bytes()), Err(MessageFault::Key));
    let reply =
        |name: &str| Reply { certificate: certificate(2), nonce: [2; 16], name: name.into() };
    assert_eq!(Reply::read(&reply("A\nna").bytes()), Err(MessageFault::Form));
}

/// Files of one pairing are called by its invitation, and two pairings apart.
#[test]
fn the_files_of_a_pairing_have_a_tag_of_their_own() {
    let tags =
        [10, 11].map(|nonce| Invited::new(certificate(1), [nonce; 16]).invitation().post_tag());
    assert!(tags[0] != tags[1] && tags.iter().all(|tag| tag.len() == 16));
}

proptest! {
    #[test]
    fn any_bytes_can_come(bytes in prop::collection::vec(any::<u8>(), 0..320), text in ".{0,80}") {
        let _ = (Invitation::read(&bytes), Reply::read(&bytes), Opening::read(&bytes));
        let _ = (Invitation::read_text(&text), Reply::read_text(&format!("HF1:{text}")));
    }

    #[test]
    fn words_are_from_the_list(nonce in any::<[u8; 16]>()) {
        let coach = Invited::new(certificate(1), nonce);
        let opened = coach.take(&[answered(coach.invitation(), 2).reply().clone()]).unwrap().unwrap();
        prop_assert!(opened.words().iter().all(|word| WORDS.contains(word)));
    }
}

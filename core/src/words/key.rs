//! What the one key and the keys beside it say, and what is asked for when something is typed.

use crate::clock::Act;
use crate::say::{key as say, screen};

/// What the one key is about, as its words need it.
pub(crate) enum KeyFor<'a> {
    /// Nothing is planned, or nobody has a plan.
    NoPlan,
    /// A day off: another day can be trained.
    DayOff,
    /// The day's session.
    Begin(&'a str),
    /// A set as planned: load and reps, and the set.
    Set {
        what: &'a str,
        set: u32,
        rests: bool,
    },
    /// A set whose load, reps or reps left must be said.
    Load,
    Reps(&'a str),
    Reserve {
        what: &'a str,
        /// True for the last set of a piece.
        last: bool,
    },
    /// A rest, with the set that comes after it.
    Rest {
        set: u32,
        what: &'a str,
    },
    /// A window as asked.
    Window {
        what: &'a str,
        window: u32,
    },
    /// A window that cannot be done yet.
    WindowToCome(Option<u32>),
    /// A clock: what is done to it.
    Clock(Act),
    /// The seconds that a clock counted.
    Held(&'a str),
    /// Those that were planned, of a session written afterwards.
    HeldAsPlanned(&'a str),
    /// A measure.
    Range,
    /// The session's end.
    Finish,
    /// What is logged already.
    Correct,
    /// A movement that hurts.
    Leave(&'a str),
    /// The clock of one that hurts.
    Stop(&'a str),
    /// An emergency sign.
    Emergency,
    /// A finished session, and one in which there was an emergency sign.
    Finished,
    FinishedInNeed,
}

/// What the key says.
pub(crate) fn key(of: &KeyFor<'_>) -> String {
    let words = match of {
        KeyFor::Begin(day) => return say::begin(day),
        KeyFor::Set { what, .. } | KeyFor::Window { what, .. } => return say::done(what),
        KeyFor::Reps(what) => return say::done_how_many(what),
        KeyFor::Reserve { what, .. } => return say::done_how_many_left(what),
        KeyFor::Held(held) | KeyFor::HeldAsPlanned(held) => return say::save_held(held),
        KeyFor::Leave(what) => return say::leave_piece(what),
        KeyFor::Stop(what) => return say::stop_piece(what),
        KeyFor::NoPlan => say::no_plan(),
        KeyFor::DayOff => say::other_day(),
        KeyFor::Load => say::choose_load(),
        KeyFor::Rest { .. } => say::end_rest(),
        KeyFor::WindowToCome(None) => say::get_ready(),
        KeyFor::WindowToCome(Some(_)) => say::wait_for_window(),
        KeyFor::Clock(Act::Begin) => say::start_clock(),
        KeyFor::Clock(Act::Pause) => say::pause(),
        KeyFor::Clock(Act::Resume) => say::go_on(),
        KeyFor::Clock(Act::Extend) => say::seconds_more(),
        KeyFor::Clock(Act::Skip) => say::next(),
        KeyFor::Clock(Act::Stop) => say::stop(),
        KeyFor::Range => say::type_reading(),
        KeyFor::Finish => say::finish(),
        KeyFor::Correct => say::correct(),
        KeyFor::Emergency => say::emergency(),
        KeyFor::Finished | KeyFor::FinishedInNeed => say::leave(),
    };
    words.into()
}

/// What happens when it is pressed, or why nothing does.
pub(crate) fn key_more(of: &KeyFor<'_>) -> Option<String> {
    let words = match of {
        KeyFor::Set { set, rests: true, .. } => return Some(say::saves_set(set)),
        KeyFor::Set { set, rests: false, .. } => return Some(say::saves_set_alone(set)),
        KeyFor::Rest { set, what } => return Some(say::then_set(set, what)),
        KeyFor::Window { window, .. } => return Some(say::saves_window(window)),
        KeyFor::WindowToCome(Some(running)) => return Some(say::window_is_logged(running)),
        KeyFor::NoPlan => say::exchange_first(),
        KeyFor::DayOff => say::nothing_planned(),
        KeyFor::Begin(_) => say::begins(),
        KeyFor::Load => say::load_saved_with_reps(),
        KeyFor::Reps(_) => say::count_good_reps(),
        KeyFor::Reserve { last: false, .. } => say::finds_next_load(),
        KeyFor::Reserve { last: true, .. } => say::finds_next_time(),
        KeyFor::WindowToCome(None) => say::first_window_comes(),
        KeyFor::Clock(Act::Begin) => say::time_to_get_ready(),
        KeyFor::Clock(_) | KeyFor::Range => return None,
        KeyFor::Held(_) => say::saves_held(),
        KeyFor::HeldAsPlanned(_) => say::saves_as_planned(),
        KeyFor::Finish => say::rating_ends(),
        KeyFor::Correct => say::already_logged(),
        KeyFor::Leave(_) => say::hurts_next_piece(),
        KeyFor::Stop(_) => say::hurts_stop_clock(),
        KeyFor::Emergency => say::emergency_stop(),
        KeyFor::Finished => say::next_exchange(),
        KeyFor::FinishedInNeed => say::get_care_now(),
    };
    Some(words.into())
}

/// What is asked for in a line to be typed.
pub(crate) fn ask(what: &str, done: bool, by_hand: bool) -> String {
    match (done, by_hand) {
        (false, false) => screen::log(what),
        (false, true) => screen::log_by_hand(what),
        (true, false) => screen::correct(what),
        (true, true) => screen::correct_by_hand(what),
    }
}

#[cfg(test)]
mod tests {
    use catalogue::Language;

    use super::*;

    /// A press does what stands on the key, in each language.
    #[test]
    fn the_key_says_what_a_press_saves() {
        let what = "60 kg, 6";
        let said = || {
            let of = [
                KeyFor::Set { what, set: 2, rests: true },
                KeyFor::Rest { set: 2, what },
                KeyFor::Leave("Squat"),
            ];
            of.map(|of| format!("{}. {}", key(&of), key_more(&of).unwrap_or_default()))
        };
        assert_eq!(
            said(),
            [
                "Done: 60 kg, 6. Saves set 2 and starts the rest.",
                "End the rest. Then set 2: 60 kg, 6.",
                "No more Squat today. It hurts: move on to the next piece.",
            ]
        );
        assert_eq!(
            catalogue::speaking(Language::De, said),
            [
                "Fertig: 60 kg, 6. Speichert Satz 2 und startet die Pause.",
                "Pause beenden. Als Nächstes 60 kg, 6 (Satz 2).",
                "Squat auslassen. Es tut weh: Mach mit dem nächsten Teil weiter.",
            ]
        );
    }
}

//! What the one key and the keys beside it say, and what is asked for when something is typed.

use crate::clock::Act;

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
    },
    /// A set whose load, reps or reps left must be said.
    Load,
    Reps(&'a str),
    Reserve(&'a str),
    /// A rest, with what comes after it.
    Rest(&'a str),
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
    /// A finished session.
    Finished,
}

/// What the key says.
pub(crate) fn key(of: &KeyFor<'_>) -> String {
    match of {
        KeyFor::NoPlan => "No plan yet".into(),
        KeyFor::DayOff => "Train another day's session".into(),
        KeyFor::Begin(day) => format!("Begin {day}"),
        KeyFor::Set { what, .. } => format!("Done: {what}"),
        KeyFor::Load => "Say the load".into(),
        KeyFor::Reps(what) => format!("Done: {what}. How many reps?"),
        KeyFor::Reserve(what) => format!("Done: {what}. How many were left?"),
        KeyFor::Rest(_) => "End the rest".into(),
        KeyFor::Window { what, .. } => format!("Done: {what}"),
        KeyFor::WindowToCome(None) => "Get ready".into(),
        KeyFor::WindowToCome(Some(_)) => "Wait for the next window".into(),
        KeyFor::Clock(Act::Begin) => "Start the clock".into(),
        KeyFor::Clock(Act::Pause) => "Pause".into(),
        KeyFor::Clock(Act::Resume) => "Go on".into(),
        KeyFor::Clock(Act::Extend) => "15 s more".into(),
        KeyFor::Clock(Act::Skip) => "Next".into(),
        KeyFor::Clock(Act::Stop) => "Stop".into(),
        KeyFor::Held(what) => format!("Save {what}"),
        KeyFor::Range => "Type the reading".into(),
        KeyFor::Finish => "Finish with a rating".into(),
        KeyFor::Correct => "Correct".into(),
        KeyFor::Leave(what) => format!("Leave {what}"),
        KeyFor::Stop(what) => format!("Stop {what}"),
        KeyFor::Emergency => "Finish, and get emergency care".into(),
        KeyFor::Finished => "Leave".into(),
    }
}

/// What happens when it is pressed, or why nothing does.
pub(crate) fn key_more(of: &KeyFor<'_>) -> Option<String> {
    Some(match of {
        KeyFor::NoPlan => "Exchange with your coach first.".into(),
        KeyFor::DayOff => "Nothing is planned today.".into(),
        KeyFor::Begin(_) => "Starts the session.".into(),
        KeyFor::Set { set, .. } => format!("Saves set {set} and starts the rest."),
        KeyFor::Load => "Choose a load; it is saved with the reps.".into(),
        KeyFor::Reps(_) => "Count the good reps of an open set.".into(),
        KeyFor::Reserve(_) => "The next set's load is found from that.".into(),
        KeyFor::Rest(next) => format!("Then {next}."),
        KeyFor::Window { window, .. } => format!("Saves window {window}."),
        KeyFor::WindowToCome(None) => "The first window comes.".into(),
        KeyFor::WindowToCome(Some(running)) => format!("Window {running} is logged."),
        KeyFor::Clock(Act::Begin) => "With time to get ready.".into(),
        KeyFor::Clock(_) | KeyFor::Range => return None,
        KeyFor::Held(_) => "Saves what the clock counted.".into(),

        KeyFor::Finish => "0 is rest, 10 the hardest there is.".into(),
        KeyFor::Correct => "It is logged already.".into(),
        KeyFor::Leave(_) => "It hurts: go on with the next piece.".into(),
        KeyFor::Stop(_) => "It hurts: stop the clock first.".into(),
        KeyFor::Emergency => "Stop now. Do not train on.".into(),
        KeyFor::Finished => "The next exchange carries it to your coach.".into(),
    })
}

/// What is asked for in a line to be typed.
pub(crate) fn ask(what: &str, done: bool, by_hand: bool) -> String {
    let verb = if done { "Correct" } else { "Log" };
    let by_hand = if by_hand { " by hand" } else { "" };
    format!("{verb} {what}{by_hand}")
}

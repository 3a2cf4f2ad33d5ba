//! What an entry was about, to say that it was taken back.

use super::plain::{because, place};
use crate::journal::Body;

/// `Squat set 2`, `Calves side 1`, `the knee flag`.
pub(crate) fn logged(body: &Body) -> String {
    match body {
        Body::Lift(it) => format!("{} set {}", it.piece, it.set),
        Body::WindowDone(it) => format!("{} window {}", it.piece, it.window),
        Body::Held(it) => format!("{} side {}", it.piece, it.side),
        Body::Range(it) => {
            let side = it.side.map_or(String::new(), |side| format!(" side {side}"));
            format!("{}{side} measured {}", it.piece, it.when.text())
        }
        Body::ClockMark(it) => format!("the clock's {} in {}", it.mark.act.text(), it.piece),
        Body::OptionTaken(it) => match it.because {
            Some(why) => format!("the option for {} in {}", because(why), it.piece),
            None => format!("going back to the movement in {}", it.piece),
        },
        Body::Discomfort(it) => format!("the {} flag", place(it.place)),
        Body::Finish(_) => "the session's end".into(),
        other => other.kind().to_owned(),
    }
}

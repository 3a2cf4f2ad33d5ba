//! Discomfort flagged between two sessions.

use holdfast_core::Holdfast;
use holdfast_core::session::{NoticeKind, SessionScreen, Tap, Typed};

use crate::args::Flag;
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{print, say};

/// Flags what was typed, and shows what to do about everything that is open.
pub(crate) fn run(holdfast: &Holdfast, given: Flag) -> Outcome {
    let Flag { felt, movement, on } = given;
    let line = std::iter::once("flag".to_owned()).chain(felt).collect::<Vec<String>>().join(" ");
    let (place, severity, signs) = match holdfast.read_flag(line, now())? {
        Typed::Tap { tap: Tap::FlagBetween { place, severity, signs, .. } } => {
            (place, severity, signs)
        }
        // While a session runs it is that one's: as it would be typed there.
        Typed::Tap { tap } if movement.is_none() && on.is_none() => {
            return shown(holdfast, &holdfast.tap(tap, None, now())?);
        }
        Typed::Tap { tap: Tap::Flag { place, severity, signs, .. } } => (place, severity, signs),
        _ => return Err(Fault::Typed(say::fault::nothing_flagged().into())),
    };
    let tap = Tap::FlagBetween { movement, place, severity, signs, on };
    shown(holdfast, &holdfast.tap(tap, None, now())?)
}

fn shown(holdfast: &Holdfast, screen: &SessionScreen) -> Outcome {
    let mut text = format!("{}\n", say::command::flagged());
    let care = screen.notices.iter().filter(|notice| notice.kind == NoticeKind::Care);
    text.extend(care.map(print::notice_line));
    text += &print::flags(&screen.flags);
    print::out(&format!("{text}{}\n", print::where_it_goes(holdfast)?))
}

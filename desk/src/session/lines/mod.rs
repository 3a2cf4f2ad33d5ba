//! A session line by line.

use std::io::{BufRead, IsTerminal};

use holdfast_core::session::{
    KeyKind, NoteFrom, NoteView, NoticeKind, PieceKindView, Row, SessionScreen, SessionState,
    SideKeyKind, Tap, Typed, line_help,
};
use holdfast_core::{Holdfast, HoldfastError};
use owo_colors::OwoColorize;

use super::{Wanted, finished, left_open, sentence};
use crate::fault::{Fault, Outcome};
use crate::now::now;
use crate::{print, say};

/// Runs a session until it is finished, left, or the input ends. Once a line says saved, it is safely
/// stored.
pub(super) fn run(holdfast: &Holdfast, wanted: Wanted) -> Outcome {
    let mut input = std::io::stdin().lock();
    let screen = holdfast.today(now())?;
    let is_it = wanted.is(&screen);
    match screen.state {
        SessionState::Finished if is_it => {
            print::out(&print::sheet(&screen))?;
            print::out(&format!("\n{}\n", say::lines::already_finished()))?;
        }
        SessionState::Running if is_it => print::out(&print::sheet(&screen))?,
        _ => {
            let screen = holdfast.tap(wanted.begin(), None, now())?;
            print::out(&print::sheet(&screen))?;
        }
    }
    print::out(&format!("\n{}\n", say::lines::keys().dimmed()))?;
    loop {
        // A running clock has moved since the last line.
        let screen = holdfast.today(now())?;
        print::out(&prompt(&screen))?;
        let Some(typed) = ask(&mut input)? else { return leave(holdfast, &screen) };
        let unread = if typed.is_empty() {
            say::lines::nothing_saved()
        } else {
            say::lines::not_understood()
        };
        match holdfast.read_line(typed, now()) {
            Ok(Typed::Leave) => return leave(holdfast, &screen),
            Ok(Typed::Help) => print::out(&line_help(&screen))?,
            Ok(Typed::Sheet) => print::out(&print::sheet(&screen))?,
            Ok(Typed::Tap { tap }) => {
                let after = do_tap(holdfast, tap)?;
                let is_done = |screen: &SessionScreen| screen.state == SessionState::Finished;
                if let Some(after) = after.filter(is_done)
                    && !is_done(&screen)
                {
                    return finished(&after);
                }
            }
            Err(HoldfastError::Invalid { reason, .. }) => {
                print::out(&format!("{} {reason}\n", unread.yellow()))?;
            }
            Err(error) => return Err(error.into()),
        }
    }
}

/// Leaves: a finished session is only left, another stays open.
fn leave(holdfast: &Holdfast, screen: &SessionScreen) -> Outcome {
    match screen.state {
        SessionState::Finished => Ok(()),
        _ => left_open(holdfast),
    }
}

/// Reads a line; none when the input has ended.
fn ask(input: &mut impl BufRead) -> Outcome<Option<String>> {
    let mut typed = Vec::new();
    let read = input.read_until(b'\n', &mut typed);
    let read = read.map_err(|error| Fault::Typed(say::fault::no_input(error)))?;
    // A byte that is no letter is shown as one that cannot be read, and ends no session.
    let typed = String::from_utf8_lossy(&typed);
    if !std::io::stdin().is_terminal() {
        // The answer's own line, as a terminal would have echoed it.
        print::out(&format!("{}\n", typed.trim_end()))?;
    }
    Ok((read > 0).then(|| typed.trim().to_owned()))
}

/// Does a tap and says that it is saved; what cannot be is said, and nothing is lost.
fn do_tap(holdfast: &Holdfast, tap: Tap) -> Outcome<Option<SessionScreen>> {
    match holdfast.tap(tap, None, now()) {
        Ok(after) => {
            print::out(&saved(&after))?;
            Ok(Some(after))
        }
        Err(error) => {
            print::out(&format!("{} {error}\n", say::lines::not_saved().red()))?;
            Ok(None)
        }
    }
}

/// What a tap saved or took back; with care where somebody hurts, and a question where it may be a slip.
fn saved(after: &SessionScreen) -> String {
    let saved = match after.saved {
        Some(number) => say::lines::saved_as(number),
        None => say::lines::saved().to_owned(),
    };
    let said = match (&after.undone, &after.saved_text) {
        (Some(undone), _) => say::lines::undone(undone),
        (None, said) => said.clone().unwrap_or_default(),
    };
    let mut text = format!("{} {said}\n", saved.green());
    if let Some(doubt) = &after.doubt {
        let sure = after.here.side_keys.iter().find(|key| key.kind == SideKeyKind::Sure);
        let slip = match sure {
            Some(sure) => say::lines::right_or_undo(&sure.words),
            None => say::lines::undo_a_slip().to_owned(),
        };
        let really = say::lines::really();
        text += &format!("  {} {} {slip}\n", really.yellow(), sentence(doubt));
    }
    text
}

/// The row at hand: what is asked about its clock, the care for it, what it asks for, what Enter does.
fn prompt(screen: &SessionScreen) -> String {
    let here = &screen.here;
    let mut text = String::from("\n");
    let care = screen.notices.iter().filter(|notice| notice.kind == NoticeKind::Care);
    text.extend(care.map(print::notice_line));
    if let Some(rest) = screen.rest.as_ref().filter(|_| here.clock.is_some()) {
        text += &format!("{}\n", say::lines::rest(&rest.words).yellow());
    }
    if let Some(question) = here.clock.as_ref().and_then(|clock| clock.question.as_ref()) {
        text += &format!("{}\n", question.yellow());
    }
    let piece = here.row.as_ref().and_then(|row| row.piece());
    let piece = screen.pieces.iter().find(|shown| Some(shown.name.as_str()) == piece);
    text += &piece.map_or(String::new(), |piece| print::flags(&piece.flags));
    // What to do instead, where the key leaves the movement.
    let options = piece.filter(|_| here.key.kind == KeyKind::Care).map(|piece| &piece.options);
    text += &options.map_or(String::new(), |options| print::options(options));
    for note in &here.notes {
        text += &format!("{note}\n");
    }
    let notes = piece.map_or(&screen.notes, |piece| &piece.notes);
    let from_coach = |note: &&NoteView| note.from == NoteFrom::Coach;
    notes.iter().filter(from_coach).for_each(|note| text += &format!("{}\n", note.text));
    // Where more than one thing speaks of a load, such as an answer and what it goes past, it is said before it is lifted.
    let set = piece.and_then(|piece| match (&piece.kind, &here.row) {
        (PieceKindView::Strength { view }, Some(Row::Set { set, .. })) => {
            view.sets.iter().find(|shown| shown.set == *set && shown.done.is_none())
        }
        _ => None,
    });
    if let Some((why, others)) = set.and_then(|set| set.why.as_ref().zip(set.others.as_ref())) {
        text += &format!("  {why}\n  {others}\n");
    }
    let clock = here.clock.as_ref().filter(|_| screen.rest.is_none());
    let clock = clock.map_or(String::new(), |clock| format!(" [{}]", print::clock(clock)));
    text + &format!("{}{clock}\n{}\n> ", here.line, print::key(&here.key).dimmed())
}

#[cfg(test)]
mod tests;

//! What a shell shows of a pairing.

use serde::Serialize;

use super::member::compared;
use super::stored::{Now, Stored};
use super::{Device, Result};
use crate::instant::Instant;
use crate::journal::Role;
use crate::plan::keyword;
use crate::say::pairing as say;
use crate::trust::Message;

keyword! {
    /// Where a pairing stands.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    PairStep {
        /// None is under way.
        Nothing = "nothing",
        /// A code is shown, and another one is waited for.
        Shows = "shows",
        /// A member compares the words, with the coach beside them.
        Compare = "compare",
        /// A coach picks the line that the member reads.
        Pick = "pick",
        /// Done on this side.
        Done = "done",
    }
}

/// What a shell shows of a pairing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PairScreen {
    /// Where it stands.
    pub step: PairStep,
    /// What to do now.
    pub ask: String,
    /// What came of what was done; none where the rest says it.
    pub told: Option<String>,
    /// The text of a code to show, as it is and as a QR code; none where it went over a carrier.
    pub code: Option<String>,
    /// The words to read out, on a member's device.
    pub words: Vec<String>,
    /// The lines to choose from, on a coach's.
    pub lines: Vec<String>,
    /// The name the other side gave; none while it is not known.
    pub name: Option<String>,
    /// What becomes of what was logged before today, where a member who joins logged anything; after joining while they are not
    /// shared.
    pub earlier: Option<String>,
}

impl Device {
    pub(super) fn pair_screen(
        &self,
        stored: &Stored,
        told: Option<String>,
        at: &Instant,
    ) -> Result<PairScreen> {
        let before = match (&stored.now, self.identity.shares_from) {
            (Now::Compared { .. }, _) => self.earlier(at.date())?,
            (Now::Joined {}, Some(from)) => self.earlier(from)?,
            _ => 0,
        };
        let plain = |step, ask: &str| PairScreen {
            step,
            ask: ask.to_owned(),
            told: told.clone(),
            code: None,
            words: Vec::new(),
            lines: Vec::new(),
            name: None,
            earlier: None,
        };
        let line = |words: [&'static str; 4]| words.join(" ");
        /// What is asked where codes are scanned, and where they go over a carrier.
        fn asked<T>(over: bool, scanned: T, carried: T) -> T {
            if over { carried } else { scanned }
        }
        Ok(match &stored.now {
            Now::Nothing {} => {
                let ask = match (self.identity.profile.role, stored.failed) {
                    // Twice is no slip any more.
                    (_, 2..) => say::two_failed(stored.failed),
                    (Role::Coach, _) => say::invite_somebody().to_owned(),
                    (Role::Athlete, _)
                        if self.identity.founder.is_some()
                            && self.belongs()
                            && self.is_taken_in()? =>
                    {
                        say::joined_already().to_owned()
                    }
                    (Role::Athlete, _) => say::ask_for_a_code().to_owned(),
                };
                plain(PairStep::Nothing, &ask)
            }
            Now::Invited { invited, .. } => PairScreen {
                code: Some(invited.invitation().text()),
                ..plain(PairStep::Shows, asked(stored.over, say::let_them_scan(), say::send_them()))
            },
            Now::Opened { opened, lines } => PairScreen {
                code: (!stored.over).then(|| opened.opening().text()),
                lines: opened.lines(*lines).map(line).to_vec(),
                name: Some(opened.reply().name.clone()),
                ..plain(
                    PairStep::Pick,
                    &asked(
                        stored.over,
                        say::which_line(&opened.reply().name),
                        say::which_line_read(&opened.reply().name),
                    ),
                )
            },
            Now::Admitted { label, .. } => PairScreen {
                name: Some(label.clone()),
                ..plain(PairStep::Done, &say::taken_in(label))
            },
            Now::Answered { answered } => PairScreen {
                code: (!stored.over).then(|| answered.reply().text()),
                ..plain(
                    PairStep::Shows,
                    asked(stored.over, say::show_your_coach(), say::on_its_way()),
                )
            },
            Now::Compared { answered, opening } => PairScreen {
                words: compared(answered, opening)?.words.map(str::to_owned).to_vec(),
                // Said before it is done, for it cannot be undone.
                told: told.clone().or_else(|| Some(say::who_reads().to_owned())),
                earlier: (before > 0).then(|| say::earlier_stay(before)),
                ..plain(PairStep::Compare, say::read_to_your_coach())
            },
            Now::Joined {} => {
                let earlier = (before > 0).then(|| say::earlier_withheld(before));
                PairScreen { earlier, ..plain(PairStep::Done, say::joined()) }
            }
        })
    }
}

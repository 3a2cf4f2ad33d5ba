//! Which page is asked for, and what a touch on one asks of the shell.

use catalogue::Language;
use serde::Serialize;

use super::choices::PhoneChoices;
use crate::exchange::web::ServerKind;
use crate::id::RecordId;
use crate::journal::Role;
use crate::mass::MassUnit;
use crate::session::Ask;

/// Which page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum PageAsk {
    /// What was done: movements, ranges, sessions. Of oneself, or of a member by name on a coach's device.
    History {
        /// The member; none for oneself.
        member: Option<String>,
    },
    /// A movement over time.
    Movement {
        /// The member; none for oneself.
        member: Option<String>,
        /// What the movement is called.
        movement: String,
    },
    /// A range of motion over time.
    Range {
        /// The member; none for oneself.
        member: Option<String>,
        /// Its place among the ranges of the history, from 0.
        index: u32,
    },
    /// One session, set by set.
    Session {
        /// The member; none for oneself.
        member: Option<String>,
        /// The session.
        session: RecordId,
    },
    /// What waits, what came, what is missing.
    Exchange {
        /// Where the carriers are that the shell keeps, as it shows them.
        carriers: Vec<String>,
    },
    /// A server to be kept as a carrier.
    Server {
        /// Of which kind it is.
        kind: ServerKind,
        /// What stands as its address at first.
        address: String,
    },
    /// One carrier that is kept.
    Carrier {
        /// Its place among those that the page before was asked with, from 0.
        index: u32,
        /// Where it is, as the shell shows it.
        place: String,
    },
    /// Who uses the device, and how they read.
    ThisPhone {
        /// What was chosen on this phone, which the shell keeps.
        choices: PhoneChoices,
    },
    /// What the room has.
    Kit,
    /// Who is in the crew.
    Crew,
    /// Somebody is being taken in, or joins.
    Pairing,
    /// The recovery code.
    Recovery {
        /// True to have the code shown.
        shown: bool,
    },
    /// The usual cautions.
    Cautions,
    /// What is stored, and who can read it.
    Stored,
    /// Everybody, those who need a look first: a coach's home.
    Board,
    /// The plan that is trained by, and how another is published.
    Plan,
}

/// Answers of somebody who starts on a device.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct StartAnswers {
    /// How many pages are behind them.
    pub step: u32,
    /// Coach or athlete.
    pub role: Option<Role>,
    /// What they are called, as it was typed.
    pub name: String,
    /// The unit they read masses in.
    pub unit: Option<MassUnit>,
    /// The language that is spoken, where they chose one.
    pub language: Option<Language>,
}

/// What a touch asks of the shell. Whatever was typed on the page goes with it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum PageAct {
    /// Opens a page.
    Open {
        /// Which.
        page: PageAsk,
    },
    /// Asks a question, which lies over the page until it is answered.
    Ask {
        /// What.
        ask: Ask,
    },
    /// Goes to where the device's own work is: the day, or a coach's board.
    Home,
    /// Goes on with what somebody who starts has answered; the name is what was typed.
    Answer {
        /// Their answers.
        answers: StartAnswers,
    },
    /// Starts.
    Begin {
        /// Their answers.
        answers: StartAnswers,
    },
    /// Goes to where a log is brought back with the recovery code.
    BringBack,
    /// Looks for a log with the code that was typed.
    Search,
    /// Starts with the log that was found.
    Restore,
    /// Chooses a language; none leaves it to the phone.
    Language {
        /// Which.
        language: Option<Language>,
    },
    /// Chooses a unit.
    Unit {
        /// Which.
        unit: MassUnit,
    },
    /// Keeps what was chosen on this phone.
    Choose {
        /// All of it.
        choices: PhoneChoices,
    },
    /// Gives a cue now, as a clock would.
    TryCue,
    /// Exchanges with every carrier that is kept.
    Exchange,
    /// Asks for a folder and keeps it as a carrier.
    KeepFolder,
    /// Chooses which kind of server is to be kept: its page takes the place of this one, with the address that was typed, the
    /// first of the fields.
    ServerKind {
        /// Which.
        kind: ServerKind,
    },
    /// Keeps the server that was typed.
    KeepServer {
        /// Of which kind it is, and so what its fields are.
        kind: ServerKind,
    },
    /// Forgets a carrier.
    ForgetCarrier {
        /// Its place among those that the page was asked with, from 0.
        index: u32,
    },
    /// A coach invites somebody.
    Invite,
    /// Reads a code with the camera.
    Scan,
    /// Takes the code that was typed.
    TypedCode,
    /// A coach picks the line that was read out.
    Pick {
        /// Counted from 1; none when it is none of them.
        line: Option<u32>,
    },
    /// A member says whether the words are the same.
    Match {
        /// True where they are.
        matches: bool,
        /// True to share also what was logged before.
        share_earlier: bool,
    },
    /// Shares what was logged before.
    ShareEarlier,
    /// Hands the code that is shown to another app, as text.
    ShareCode,
    /// Ends the pairing.
    StopPairing,
    /// Takes the groups of the recovery code that were typed back.
    ConfirmCode,
    /// Asks for a plan file and publishes it.
    Publish,
}

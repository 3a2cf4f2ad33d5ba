//! A body of any kind: its name in journals, its JSON, how it is looked up.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde_json::value::{RawValue, to_raw_value};

use super::crew::{Admit, Forgot, Here, Remove, Stopped};
use super::kinds::{
    BarTaken, Cleared, ClockMark, Discomfort, Finish, Held, OptionTaken, PlanText, Profile, PutOff,
    Range, RestMark, Ruling, Session, TakenBack, WindowDone,
};
use super::lift::{Lift, Max, SetAside};
use super::note::Note;
use crate::error::Result;
use crate::id::RecordId;

/// How a record is looked up.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Keys {
    /// The session it belongs to.
    pub session: Option<RecordId>,
    /// What it is about.
    pub subject: String,
    /// The scheme, for sets.
    pub scheme: String,
}

macro_rules! bodies {
    ($($(#[$doc:meta])* $kind:ident = $text:literal),+ $(,)?) => {
        /// What an entry says.
        #[derive(Clone, Debug, PartialEq, Eq)]
        #[allow(missing_docs, reason = "each struct says what it is")]
        pub enum Body { $($kind($kind)),+ }

        impl Body {
            /// The names of all kinds in journals.
            pub const KINDS: &'static [&'static str] = &[$($text),+];

            /// The kind's name in journals.
            pub fn kind(&self) -> &'static str {
                match self { $(Body::$kind(_) => $text),+ }
            }

            /// Reads a body; `None` when the kind is unknown here or its fields do not fit.
            pub fn decode(kind: &str, json: &str) -> Option<Body> {
                match kind {
                    $($text => serde_json::from_str(json).ok().map(Body::$kind),)+
                    _ => None,
                }
            }

            /// Writes the body as JSON.
            pub(crate) fn encode(&self) -> Result<Box<RawValue>> {
                Ok(match self { $(Body::$kind(body) => to_raw_value(body)?),+ })
            }
        }

        $(
            impl Kind for $kind {
                const NAME: &'static str = $text;
                fn from_body(body: Body) -> Option<$kind> {
                    match body { Body::$kind(body) => Some(body), _ => None }
                }
            }
            impl From<$kind> for Body {
                fn from(body: $kind) -> Body { Body::$kind(body) }
            }
        )+
    };
}

/// A kind of body that queries can ask for by type.
pub(crate) trait Kind: Sized {
    /// The kind's name in journals.
    const NAME: &'static str;
    /// The body, when it is of this kind.
    fn from_body(body: Body) -> Option<Self>;
}

bodies! {
    Profile = "profile",
    PlanText = "plan",
    Session = "session",
    OptionTaken = "option",
    BarTaken = "bar",
    Lift = "lift",
    WindowDone = "window",
    ClockMark = "clock",
    Held = "hold",
    Range = "range",
    Discomfort = "flag",
    Cleared = "clear",
    Finish = "finish",
    Ruling = "ruling",
    RestMark = "rest",
    PutOff = "put-off",
    SetAside = "set-aside",
    Note = "note",
    Max = "max",
    Admit = "admit",
    Remove = "remove",
    Stopped = "stop",
    Here = "here",
    Forgot = "forgot",
    TakenBack = "taken-back",
}

impl Body {
    /// How the record is looked up.
    pub(crate) fn keys(&self) -> Keys {
        let of = |session: Option<RecordId>, subject: &str| Keys {
            session,
            subject: subject.to_owned(),
            scheme: String::new(),
        };
        match self {
            Body::Profile(body) => of(None, &body.person.to_string()),
            Body::PlanText(body) => of(None, &body.block),
            // One subject for all, so that an index finds the latest session at once.
            Body::Session(_) => of(None, ""),
            Body::OptionTaken(body) => of(Some(body.session), &body.piece),
            Body::BarTaken(body) => of(Some(body.session), &body.exercise.to_string()),
            Body::Lift(body) => Keys {
                scheme: body.scheme.key(),
                ..of(Some(body.session), &body.exercise.to_string())
            },
            Body::WindowDone(body) => of(Some(body.session), &body.exercise.to_string()),
            Body::ClockMark(body) => of(Some(body.session), &body.piece),
            Body::Held(body) => of(Some(body.session), &body.stretch),
            Body::Range(body) => of(Some(body.session), body.protocol.text()),
            Body::Discomfort(body) => {
                let exercise = body.exercise.as_ref().map(ToString::to_string);
                of(body.session, &exercise.unwrap_or_default())
            }
            Body::Cleared(body) => of(body.session, &body.flag.to_string()),
            Body::Finish(body) => of(Some(body.session), ""),
            Body::Ruling(body) => Keys {
                scheme: body.scheme.clone(),
                ..of(None, &format!("{}/{}", body.person, body.exercise))
            },
            Body::RestMark(body) => of(Some(body.session), &body.piece),
            Body::PutOff(body) => of(Some(body.session), &body.piece),
            Body::SetAside(body) => of(None, &body.lift.to_string()),
            Body::Note(body) => {
                let exercise = body.exercise.as_ref().map(ToString::to_string);
                of(Some(body.session), &exercise.unwrap_or_default())
            }
            Body::Max(body) => of(None, &format!("{}/{}", body.person, body.exercise)),
            Body::Admit(body) => of(None, &body.person.to_string()),
            Body::Remove(body) => of(None, &body.person.to_string()),
            Body::Stopped(_) | Body::Here(_) => of(None, ""),
            Body::Forgot(body) => of(None, &body.person.to_string()),
            Body::TakenBack(_) => Keys::default(),
        }
    }

    /// The piece of a day it is about, where it is about one.
    pub(crate) fn piece(&self) -> Option<&str> {
        Some(match self {
            Body::OptionTaken(body) => &body.piece,
            Body::BarTaken(body) => &body.piece,
            Body::Lift(body) => &body.piece,
            Body::WindowDone(body) => &body.piece,
            Body::ClockMark(body) => &body.piece,
            Body::Held(body) => &body.piece,
            Body::Range(body) => &body.piece,
            Body::Discomfort(body) => return body.piece.as_deref(),
            Body::Note(body) => return body.piece.as_deref(),
            Body::RestMark(body) => &body.piece,
            Body::PutOff(body) => &body.piece,
            Body::Profile(_)
            | Body::PlanText(_)
            | Body::Session(_)
            | Body::Cleared(_)
            | Body::Finish(_)
            | Body::Ruling(_)
            | Body::SetAside(_)
            | Body::Max(_)
            | Body::Admit(_)
            | Body::Remove(_)
            | Body::Stopped(_)
            | Body::Here(_)
            | Body::Forgot(_)
            | Body::TakenBack(_) => return None,
        })
    }

    /// The date it is about, where it was written afterwards and says so.
    pub(crate) fn on(&self) -> Option<NaiveDate> {
        match self {
            Body::Session(body) => body.afterwards.then_some(body.date),
            Body::OptionTaken(body) => body.on,
            Body::BarTaken(body) => body.on,
            Body::Lift(body) => body.on,
            Body::WindowDone(body) => body.on,
            Body::Held(body) => body.on,
            Body::Range(body) => body.on,
            Body::Discomfort(body) => body.on,
            Body::Finish(body) => body.on,
            Body::Note(body) => body.on,
            Body::Profile(_)
            | Body::PlanText(_)
            | Body::ClockMark(_)
            | Body::Cleared(_)
            | Body::Ruling(_)
            | Body::RestMark(_)
            | Body::PutOff(_)
            | Body::SetAside(_)
            | Body::Max(_)
            | Body::Admit(_)
            | Body::Remove(_)
            | Body::Stopped(_)
            | Body::Here(_)
            | Body::Forgot(_)
            | Body::TakenBack(_) => None,
        }
    }

    /// Writes the body on top of an earlier entry's, so that fields a newer app put there stay.
    ///
    /// Own fields must therefore always be written, empty or not: one left out would keep what the
    /// earlier entry said.
    pub(crate) fn encode_over(&self, parent: &str) -> Result<Box<RawValue>> {
        // As they stand: a number may be larger, or finer, than anything here could hold.
        type Fields = BTreeMap<String, Box<RawValue>>;
        let mut fields: Fields = serde_json::from_str(parent)?;
        let own: Fields = serde_json::from_str(self.encode()?.get())?;
        fields.extend(own);
        Ok(to_raw_value(&fields)?)
    }
}

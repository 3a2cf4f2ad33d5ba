//! The records of a question: what is asked, what is answered, what is drawn.

use serde::{Deserialize, Serialize};

use crate::care::{Place, Sign};
use crate::id::RecordId;
use crate::instant::Millis;
use crate::mass::Mass;
use crate::plan::keyword;
use crate::session::{Key, Row};

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "ask", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum Ask {
    /// What was done in a row, or what is otherwise about something that is logged.
    Row {
        /// The row.
        row: Row,
        /// True for all of it; otherwise only for what the one key waits for.
        whole: bool,
    },
    /// An option for a piece.
    Option {
        /// The piece's name.
        piece: String,
    },
    /// Where and how much it hurts.
    Hurts {
        /// The row at hand; none between sessions.
        row: Option<Row>,
    },
    /// Which discomfort flag of a piece to clear.
    Clear {
        /// The piece's name.
        piece: String,
    },
    /// A note.
    Note {
        /// What it is about; none for the session as a whole.
        row: Option<Row>,
    },
    /// A set that nobody planned.
    Extra,
    /// A set that is logged, of whatever day.
    Logged {
        /// Its record.
        lift: RecordId,
    },
    /// Which day to train.
    Day,
    /// The station to start at.
    Station {
        /// The piece's name.
        piece: String,
    },
    /// The bar to lift with.
    Bar {
        /// The piece's name.
        piece: String,
    },
}

/// What is answered so far. A shell hands back what a touch led to; of it, it writes what is typed alone.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Answers {
    /// A load.
    pub load: Option<Mass>,
    /// True where it is said that there was no load.
    pub no_load: bool,
    /// A load or a reading as it was typed; none where it was not.
    pub typed: Option<String>,
    /// Which of the sides the typed reading is of, counted from 0.
    pub side: Option<u32>,
    /// Good reps.
    pub reps: Option<u32>,
    /// Reps in reserve.
    pub reserve: Option<u32>,
    /// The time to spare in a window.
    pub spare: Option<Millis>,
    /// The time held, side by side.
    pub held: Vec<Millis>,
    /// Readings in tenths of the protocol's unit, side by side; none where a side was not read yet.
    pub tenths: Vec<Option<i64>>,
    /// Session RPE.
    pub rpe: Option<u32>,
    /// How many minutes the session took.
    pub minutes: Option<u32>,
    /// Where it hurts.
    pub place: Option<Place>,
    /// How bad, 1 to 10.
    pub severity: Option<u32>,
    /// Emergency signs.
    pub signs: Vec<Sign>,
    /// True while the emergency signs are on screen.
    pub asks_signs: bool,
    /// The movement that an option or discomfort is about, by its key.
    pub movement: Option<String>,
    /// An option's key, or the name of a day or bar.
    pub name: Option<String>,
    /// A discomfort flag.
    pub flag: Option<RecordId>,
    /// A station, counted from 1.
    pub station: Option<u32>,
    /// The text of a note.
    pub words: Option<String>,
    /// True for a note that stays on this device.
    pub private: Option<bool>,
    /// True for a set that was not done after all.
    pub undone: bool,
}

keyword! {
    /// The sign in front of a question's title.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    QuestionSign {
        /// Pain.
        Pain = "pain",
        /// An option.
        Option = "option",
    }
}

/// A question on screen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct QuestionScreen {
    /// What is asked.
    pub title: String,
    /// What it is about, in a few words; none where the title says it.
    pub about: Option<String>,
    /// The sign in front of the title.
    pub sign: Option<QuestionSign>,
    /// What can be touched, from top to bottom.
    pub fields: Vec<QuestionField>,
    /// The key that takes the answer, or says what is missing.
    pub key: Key,
}

/// Something to touch.
#[expect(clippy::large_enum_variant, reason = "a question has a handful, and none is kept")]
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "field", rename_all = "kebab-case")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum QuestionField {
    /// A value between a key for less and one for more.
    Stepper {
        /// What it is.
        label: String,
        /// The value as it stands; none before one is chosen.
        value: Option<String>,
        /// Its unit.
        unit: Option<String>,
        /// Less: the value it leads to.
        less: Option<Choice>,
        /// More.
        more: Option<Choice>,
        /// How it can be typed instead; none where steps do.
        typed: Option<TypedNumber>,
    },
    /// Keys of which one is chosen, or of which each is chosen or not.
    Choices {
        /// What they are; none where the title says it.
        label: Option<String>,
        /// How they are drawn.
        shape: ChoiceShape,
        /// The keys.
        choices: Vec<Choice>,
        /// What the ends or parts of the scale mean.
        notes: Vec<String>,
    },
    /// A text to be typed.
    Words {
        /// What it is.
        label: String,
        /// What is answered so far: a shell writes the text into it.
        then: Answers,
    },
}

/// A number that can be typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct TypedNumber {
    /// What the key says that opens it.
    pub words: String,
    /// What is answered so far: a shell writes the text into it.
    pub then: Answers,
}

keyword! {
    /// How keys to choose from are drawn.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    ChoiceShape {
        /// Numbers, as many in a row as fit.
        Numbers = "numbers",
        /// Words, three in a row.
        Words = "words",
        /// One a row, with lines.
        Rows = "rows",
    }
}

/// A key to choose.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Choice {
    /// What it says.
    pub words: String,
    /// More about it, a line each.
    pub more: Vec<String>,
    /// True when it is chosen.
    pub chosen: bool,
    /// True for one of pain from which the movement stops, or of an emergency.
    pub care: bool,
    /// What is answered once it is touched.
    pub then: Answers,
}

impl Choice {
    /// One with nothing more to say of it.
    pub(super) fn new(words: impl Into<String>, chosen: bool, then: Answers) -> Choice {
        Choice { words: words.into(), more: Vec::new(), chosen, care: false, then }
    }
}

impl QuestionField {
    /// Numbers, each with what is answered once it is touched.
    pub(super) fn numbers(
        label: Option<String>,
        numbers: impl IntoIterator<Item = u32>,
        chosen: Option<u32>,
        then: impl Fn(u32) -> Answers,
    ) -> QuestionField {
        let choice =
            |number: u32| Choice::new(number.to_string(), chosen == Some(number), then(number));
        let choices = numbers.into_iter().map(choice).collect();
        QuestionField::Choices { label, shape: ChoiceShape::Numbers, choices, notes: Vec::new() }
    }

    /// Keys of which each has a row of its own.
    pub(super) fn rows(choices: Vec<Choice>) -> QuestionField {
        QuestionField::Choices { label: None, shape: ChoiceShape::Rows, choices, notes: Vec::new() }
    }

    /// A whole number with its neighbours, within bounds.
    pub(super) fn count(
        label: String,
        (value, bounds): (u32, std::ops::RangeInclusive<u32>),
        then: impl Fn(u32) -> Answers,
    ) -> QuestionField {
        let to = |next: Option<u32>| {
            let next = next.filter(|next| bounds.contains(next))?;
            Some(Choice::new(next.to_string(), false, then(next)))
        };
        QuestionField::Stepper {
            label,
            value: Some(value.to_string()),
            unit: None,
            less: to(value.checked_sub(1)),
            more: to(value.checked_add(1)),
            typed: None,
        }
    }
}

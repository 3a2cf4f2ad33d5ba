//! The records of a page: what is read on it, and what can be touched.

use serde::Serialize;

use super::act::{PageAct, PageAsk};
use crate::say::page as say;

/// A page: what to read from the top down, and at its foot the key.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageScreen {
    /// What it is about.
    pub title: String,
    /// Stands at the right of the way back, small.
    pub beside: Option<String>,
    /// The number that matters most here.
    pub number: Option<PageNumber>,
    /// What to know first, in a frame.
    pub block: Option<PageBlock>,
    /// What is chosen before anything else, and decides what stands below.
    pub choices: Vec<PageRow>,
    /// Sentences, a paragraph each.
    pub said: Vec<String>,
    /// A chart.
    pub chart: Option<Chart>,
    /// A code to be scanned.
    pub code: Option<PageCode>,
    /// Words to be read out, or compared.
    pub words: Vec<String>,
    /// What can be typed.
    pub fields: Vec<PageField>,
    /// Rows.
    pub rows: Vec<PageRow>,
    /// Keys beside the one key, three at most.
    pub beside_key: Vec<PageKey>,
    /// The one key.
    pub key: Option<PageKey>,
}

/// A large number with what it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageNumber {
    /// The number alone.
    pub number: String,
    /// Its unit.
    pub unit: String,
    /// What it is, a line each.
    pub about: Vec<String>,
}

/// A frame.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageBlock {
    /// In large letters.
    pub heading: String,
    /// Below it.
    pub text: String,
}

/// Something that is typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageField {
    /// What it is.
    pub label: String,
    /// What stands in it at first.
    pub text: String,
    /// True for what nobody beside it may read.
    pub secret: bool,
    /// True for what may stay empty.
    pub optional: bool,
}

/// A row.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageRow {
    /// Stands above the row, where a part of the page begins.
    pub heading: Option<String>,
    /// Its sign; the words say the same.
    pub sign: Option<PageSign>,
    /// The sign's word, before the text.
    pub word: Option<String>,
    /// What it is about.
    pub title: String,
    /// Below it.
    pub text: Option<String>,
    /// At the right.
    pub value: Option<String>,
    /// Whether it is chosen; none where there is nothing to choose.
    pub chosen: Option<bool>,
    /// What a touch does; none where it is only read.
    pub does: Option<PageAct>,
}

/// The sign of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
#[allow(missing_docs, reason = "each is what it says")]
pub enum PageSign {
    Pain,
    Check,
    Stalled,
    Away,
    Option,
    Rushed,
    Versions,
    Up,
    Note,
    Sent,
    NotArrived,
    Aside,
}

/// A key of a page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageKey {
    /// What it does.
    pub words: String,
    /// What comes of it, or what it waits for.
    pub more: Option<String>,
    /// True where it writes something down.
    pub saves: bool,
    /// True where everything above it has to have been in view before it can be touched: it cannot be undone.
    pub read_first: bool,
    /// What it says while a field is empty that may not be: it waits until then. None where it does not wait for that.
    pub typed_first: Option<String>,
    /// What a touch asks; none while it waits for an answer.
    pub does: Option<PageAct>,
}

/// A code to be scanned, dark on light whatever the theme.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct PageCode {
    /// The text, for whoever cannot scan.
    pub text: String,
    /// Modules on a side (ISO/IEC 18004).
    pub side: u32,
    /// True for a dark module, row by row from the top left.
    pub dark: Vec<bool>,
}

/// A line over time with the range it probably is in. Everything lies in a square of side 1: `x` from the first day to the
/// last, `y` from the foot to the top.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Chart {
    /// What it shows, in a sentence: for whoever does not see it.
    pub said: String,
    /// The points, the earliest first.
    pub points: Vec<ChartPoint>,
    /// What the first point is, written beside it.
    pub first: String,
    /// What the last one is.
    pub last: String,
    /// Levels, written at the left.
    pub levels: Vec<ChartMark>,
    /// Days, written at the foot.
    pub days: Vec<ChartMark>,
}

/// A point of a chart.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ChartPoint {
    /// When.
    pub x: f64,
    /// How much.
    pub y: f64,
    /// The lower end of the band there.
    pub low: Option<f64>,
    /// The upper end.
    pub high: Option<f64>,
    /// True where a set was missed: a cross.
    pub missed: bool,
}

/// A mark on a side of a chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct ChartMark {
    /// Where.
    pub at: f64,
    /// What it is.
    pub words: String,
}

impl PageScreen {
    pub(super) fn titled(title: impl Into<String>) -> PageScreen {
        PageScreen { title: title.into(), ..PageScreen::default() }
    }
}

impl PageField {
    /// Something to type that must be typed.
    pub(super) fn empty(label: impl Into<String>) -> PageField {
        PageField { label: label.into(), text: String::new(), secret: false, optional: false }
    }
}

impl PageRow {
    pub(super) fn titled(title: impl Into<String>) -> PageRow {
        PageRow { title: title.into(), ..PageRow::default() }
    }

    /// A row that opens a page.
    pub(super) fn opens(title: impl Into<String>, page: PageAsk) -> PageRow {
        PageRow { does: Some(PageAct::Open { page }), ..PageRow::titled(title) }
    }

    /// A row that is chosen or not.
    pub(super) fn choice(title: impl Into<String>, chosen: bool, does: PageAct) -> PageRow {
        PageRow { chosen: Some(chosen), does: Some(does), ..PageRow::titled(title) }
    }

    pub(super) fn says(mut self, text: impl Into<String>) -> PageRow {
        self.text = Some(text.into());
        self
    }

    pub(super) fn worth(mut self, value: impl Into<String>) -> PageRow {
        self.value = Some(value.into());
        self
    }
}

impl PageKey {
    /// A key that leads on and writes nothing down.
    pub(super) fn moves(words: impl Into<String>, does: PageAct) -> PageKey {
        PageKey { does: Some(does), ..PageKey::waits(words) }
    }

    /// A key that writes something down.
    pub(super) fn saves(words: impl Into<String>, does: PageAct) -> PageKey {
        PageKey { saves: true, ..PageKey::moves(words, does) }
    }

    /// A key that says what it waits for.
    pub(super) fn waits(words: impl Into<String>) -> PageKey {
        PageKey {
            words: words.into(),
            more: None,
            saves: false,
            read_first: false,
            typed_first: None,
            does: None,
        }
    }

    /// Waits until everything is typed that has to be.
    pub(super) fn once_typed(mut self) -> PageKey {
        self.typed_first = Some(say::type_the_rest().to_owned());
        self
    }

    pub(super) fn once_read(mut self) -> PageKey {
        self.read_first = true;
        self
    }

    pub(super) fn more(mut self, more: impl Into<String>) -> PageKey {
        self.more = Some(more.into());
        self
    }
}

//! Charts as text of SVG that stands inside the page.
//!
//! A chart has no colours and no font of its own. It is drawn with stand-in colours that occur
//! nowhere else, and in the finished text each stand-in becomes a variable of the page's style
//! sheet: `fill="#010004"` is `fill="var(--main)"`. So one drawing serves light, dark and paper.
//! The font is taken out and so inherited. The `svg` element itself is written by the page's
//! template, with the words for those who do not see it; no text of a person's gets in here.

mod frame;
mod ink;
mod lift;
mod range;
mod region;
mod scale;
mod strength;
mod week;

use plotters::drawing::DrawingAreaErrorKind;

use frame::Area;
pub(super) use lift::lift;
pub(super) use range::range;
pub(super) use region::regions;
pub(super) use strength::strength;
pub(super) use week::weeks;

/// What drawing gives: the drawing fails only if the backend does.
pub(super) type Painted<T> = Result<T, DrawingAreaErrorKind<std::io::Error>>;

/// A chart with its words.
pub(super) struct Figure {
    /// What it shows.
    pub(super) title: String,
    /// How to read it.
    pub(super) note: String,
    /// What it shows, with its data in words.
    pub(super) described: String,
    /// Its width, in units of its own.
    pub(super) width: u32,
    /// Its height, in units of its own.
    pub(super) height: u32,
    /// What stands inside its `svg` element.
    pub(super) marks: String,
}

impl Figure {
    fn drawn(
        (title, note, says): (String, String, String),
        height: u32,
        paint: impl FnOnce(&Area<'_>) -> Painted<()>,
    ) -> Painted<Figure> {
        let marks = ink::draw(height, paint)?;
        let described = crate::say::report::described(&title, says);
        Ok(Figure { title, note, described, width: ink::WIDTH, height, marks })
    }
}

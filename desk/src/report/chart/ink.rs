//! Colours that follow the page's theme.

use plotters::style::{RGBColor, TextStyle};

use super::{Area, Painted};
use plotters::backend::SVGBackend;
use plotters::prelude::IntoDrawingArea;
use plotters::style::IntoFont;

/// Words and numbers that carry the data.
pub(super) const INK: RGBColor = RGBColor(1, 0, 1);
/// Words on an axis.
pub(super) const SOFT: RGBColor = RGBColor(1, 0, 2);
/// Lines of an axis.
pub(super) const RULE: RGBColor = RGBColor(1, 0, 3);
/// The first accent.
pub(super) const MAIN: RGBColor = RGBColor(1, 0, 4);
/// The second accent.
pub(super) const OTHER: RGBColor = RGBColor(1, 0, 5);
/// An area behind the data.
pub(super) const BAND: RGBColor = RGBColor(1, 0, 6);
/// The ground a chart stands on.
pub(super) const PAPER: RGBColor = RGBColor(1, 0, 7);

/// The variable of the page's style sheet that each stand-in becomes.
const VARIABLES: [(RGBColor, &str); 7] = [
    (INK, "--ink"),
    (SOFT, "--soft"),
    (RULE, "--rule"),
    (MAIN, "--main"),
    (OTHER, "--other"),
    (BAND, "--band"),
    (PAPER, "--paper"),
];

/// Charts are drawn at twice the size they are read at, so that whole pixels are fine enough.
pub(super) const WIDTH: u32 = 760;
/// How high a line of words is, in a chart's own units.
pub(super) const TEXT: f64 = 26.0;
/// How wide a character is at most, in a chart's own units.
pub(super) const CHARACTER: f64 = 15.0;

/// The style of words in a chart.
pub(super) fn words(colour: RGBColor) -> TextStyle<'static> {
    // The backend divides sizes by 1.24.
    ("inherit", TEXT * 1.24).into_font().color(&colour)
}

/// Draws on a sheet of a height and returns what stands inside its `svg` element.
pub(super) fn draw(height: u32, paint: impl FnOnce(&Area<'_>) -> Painted<()>) -> Painted<String> {
    let mut text = String::new();
    {
        let sheet = SVGBackend::with_string(&mut text, (WIDTH, height)).into_drawing_area();
        paint(&sheet)?;
        sheet.present()?;
    }
    Ok(themed(&text))
}

fn themed(svg: &str) -> String {
    let inside = svg.split_once('>').map_or("", |(_, inside)| inside);
    let inside = inside.trim_end().strip_suffix("</svg>").unwrap_or(inside);
    let mut text =
        inside.trim().replace(" font-family=\"inherit\"", "").replace(" opacity=\"1\"", "");
    for (RGBColor(red, green, blue), variable) in VARIABLES {
        let stand_in = format!("\"#{red:02X}{green:02X}{blue:02X}\"");
        text = text.replace(&stand_in, &format!("\"var({variable})\""));
    }
    text
}

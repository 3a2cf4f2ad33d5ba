//! The frame of a chart: two axes, and the marks that several charts share.

use plotters::backend::SVGBackend;
use plotters::chart::{ChartBuilder, ChartContext};
use plotters::coord::Shift;
use plotters::coord::cartesian::Cartesian2d;
use plotters::drawing::DrawingArea;
use plotters::element::{EmptyElement, Rectangle, Text};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, RGBColor, TRANSPARENT};

use super::Painted;
use super::ink::{INK, RULE, SOFT, TEXT, words};
use super::scale::{Ruler, written};

/// A sheet, or a part of one.
pub(super) type Area<'a> = DrawingArea<SVGBackend<'a>, Shift>;
/// A part of a sheet with axes.
pub(super) type Plot<'a> = ChartContext<'a, SVGBackend<'a>, Cartesian2d<Ruler, Ruler>>;

const LINE: u32 = 2;
const HEADING: u32 = 54;
const SIDE: u32 = 84;
const FOOT: u32 = 44;
/// Half a date stands beyond the last place.
const SPARE: u32 = 40;

/// Draws axes with the unit of the upright one above it; the lower one only where it has names.
pub(super) fn frame<'a>(area: &Area<'a>, unit: &str, x: &Ruler, y: &Ruler) -> Painted<Plot<'a>> {
    area.draw(&Text::new(unit.to_owned(), (4, 6), words(SOFT)))?;
    let mut plot = ChartBuilder::on(area)
        .margin_top(HEADING)
        .margin_right(SPARE)
        .y_label_area_size(SIDE)
        .x_label_area_size(if x.marks.is_empty() { 16 } else { FOOT })
        .build_cartesian_2d(x.clone(), y.clone())?;
    plot.configure_mesh()
        .disable_x_mesh()
        .bold_line_style(RULE.stroke_width(LINE))
        .light_line_style(TRANSPARENT)
        .axis_style(RULE.stroke_width(LINE))
        .set_all_tick_mark_size(8)
        .label_style(words(SOFT))
        .draw()?;
    Ok(plot)
}

/// Which side of a point its word stands on.
#[derive(Clone, Copy)]
pub(super) enum Beside {
    Above,
    Below,
}

/// Writes a word beside a point.
pub(super) fn word(plot: &mut Plot<'_>, at: (f64, f64), text: String, side: Beside) -> Painted<()> {
    let gap = (TEXT * 0.65) as i32;
    let (offset, anchor) = match side {
        Beside::Above => (-gap, VPos::Bottom),
        Beside::Below => (gap, VPos::Top),
    };
    let style = words(INK).pos(Pos::new(HPos::Center, anchor));
    let placed = EmptyElement::at(at) + Text::new(text, (0, offset), style);
    plot.draw_series(std::iter::once(placed))?;
    Ok(())
}

/// How large points are drawn, where so many stand in a row.
pub(super) fn size(count: usize) -> i32 {
    if count > 16 { 5 } else { 8 }
}

/// Draws bars, with their numbers above as far as there is room.
pub(super) fn bars(
    plot: &mut Plot<'_>,
    x: &Ruler,
    bars: &[(f64, f64)],
    text: impl Fn(usize) -> String,
    colour: RGBColor,
) -> Painted<()> {
    let bar =
        |(x, y): &(f64, f64)| Rectangle::new([(x - 0.3, 0.0), (x + 0.3, *y)], colour.filled());
    plot.draw_series(bars.iter().map(bar))?;
    for (index, written) in written(bars, &x.range, 4).into_iter().enumerate() {
        if written {
            word(plot, bars[index], text(index), Beside::Above)?;
        }
    }
    Ok(())
}

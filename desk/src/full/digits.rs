//! Digits and masses as big as there is room for, to be read from the floor.

/// A glyph's rows of dots. A dot is about square on most terminals: a column by half a row.
fn glyph(of: char) -> Option<[&'static str; DOTS_HIGH]> {
    Some(match of {
        '0' => ["###", "# #", "# #", "# #", "###"],
        '1' => [" # ", "## ", " # ", " # ", "###"],
        '2' => ["###", "  #", "###", "#  ", "###"],
        '3' => ["###", "  #", "###", "  #", "###"],
        '4' => ["# #", "# #", "###", "  #", "  #"],
        '5' => ["###", "#  ", "###", "  #", "###"],
        '6' => ["###", "#  ", "###", "# #", "###"],
        '7' => ["###", "  #", "  #", "  #", "  #"],
        '8' => ["###", "# #", "###", "# #", "###"],
        '9' => ["###", "# #", "###", "  #", "###"],
        '+' => ["   ", " # ", "###", " # ", "   "],
        '-' => ["   ", "   ", "###", "   ", "   "],
        ':' => [" ", "#", " ", "#", " "],
        '.' => [" ", " ", " ", " ", "#"],
        ',' => ["  ", "  ", "  ", " #", "# "],
        ' ' => [" ", " ", " ", " ", " "],
        // Units and times: capitals where a small letter would look like a digit.
        'x' | 'X' | '×' => ["   ", "# #", " # ", "# #", "   "],
        'k' | 'K' => ["# #", "# #", "## ", "# #", "# #"],
        'g' | 'G' => [" ##", "#  ", "# #", "# #", " ##"],
        'l' | 'L' => ["#  ", "#  ", "#  ", "#  ", "###"],
        'b' | 'B' => ["#  ", "#  ", "## ", "# #", "## "],
        _ => return None,
    })
}

const DOTS_HIGH: usize = 5;

/// Dots across, gaps included; none where a character has no glyph.
fn dots(text: &str) -> Option<u16> {
    let each = text.chars().map(|letter| Some(glyph(letter)?[0].len() as u16 + 1));
    let sum: u16 = each.sum::<Option<u16>>()?;
    sum.checked_sub(1)
}

/// Rows that any text takes at a scale: the dots a side, each half a row high.
pub(crate) fn height(scale: u16) -> u16 {
    (DOTS_HIGH as u16).saturating_mul(scale).div_ceil(2)
}

/// Columns that a text takes at a scale; none where it cannot be drawn.
pub(crate) fn width(text: &str, scale: u16) -> Option<u16> {
    Some(dots(text)?.saturating_mul(scale))
}

/// The biggest scale at which a text fits, if any does.
pub(crate) fn fit(text: &str, wide: u16, high: u16) -> Option<u16> {
    let fits = |scale: &u16| width(text, *scale).is_some_and(|columns| columns <= wide);
    (1..=high * 2 / DOTS_HIGH as u16).rev().filter(|scale| height(*scale) <= high).find(fits)
}

/// The text's rows at a scale.
pub(crate) fn rows(text: &str, scale: u16) -> Vec<String> {
    let scale = usize::from(scale);
    let glyphs: Vec<[&str; DOTS_HIGH]> = text.chars().filter_map(glyph).collect();
    let half_row = |half: usize| -> Vec<bool> {
        let each = glyphs.iter().map(|rows| {
            let dots = rows.get(half / scale).copied().unwrap_or("");
            dots.chars().flat_map(|dot| vec![dot == '#'; scale]).collect::<Vec<bool>>()
        });
        each.collect::<Vec<_>>().join(&vec![false; scale][..])
    };
    let empty = || vec![false; half_row(0).len()];
    let all = DOTS_HIGH * scale;
    let row = |upper: usize| {
        let lower = if upper + 1 < all { half_row(upper + 1) } else { empty() };
        half_row(upper).into_iter().zip(lower).map(|(upper, lower)| block(upper, lower)).collect()
    };
    (0..all).step_by(2).map(row).collect()
}

/// The upper and the lower half of a cell.
fn block(upper: bool, lower: bool) -> char {
    match (upper, lower) {
        (true, true) => '\u{2588}',
        (true, false) => '\u{2580}',
        (false, true) => '\u{2584}',
        (false, false) => ' ',
    }
}

/// Milliseconds left as `2:05`, rounded up: it says 0:00 when the time is over and not before.
pub(crate) fn left(ms: i64) -> String {
    let seconds = ms.max(0).saturating_add(999) / 1000;
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_glyph_can_be_told_apart_and_is_as_big_as_it_says() {
        let mut seen = std::collections::BTreeSet::new();
        for letter in "0123456789:+-.,xkglb".chars() {
            for scale in [1, 2] {
                let rows = (scale, rows(&letter.to_string(), scale));
                assert!(seen.insert(rows), "{letter} looks like another at {scale}");
            }
        }
        for text in ["12:34", "20 + 2.5 kg"] {
            for scale in 1..6 {
                let (wide, high) = (width(text, scale).unwrap(), height(scale));
                let drawn = rows(text, scale);
                assert_eq!(drawn.len(), usize::from(high), "{scale}");
                assert!(drawn.iter().all(|row| row.chars().count() == usize::from(wide)));
            }
        }
        assert_eq!(rows("1", 2), ["  ██  ", "████  ", "  ██  ", "  ██  ", "██████"]);
        assert_eq!(rows("1", 1), ["▄█ ", " █ ", "▀▀▀"]);
    }

    #[test]
    fn the_scale_is_the_biggest_that_fits() {
        assert_eq!(fit("2:00", 80, 24), Some(6));
        assert_eq!(fit("2:00", 80, 12), Some(4));
        assert_eq!(fit("2:00", 26, 5), Some(2));
        assert_eq!(fit("2:00", 25, 5), Some(1));
        assert_eq!(fit("2:00", 80, 3), Some(1));
        assert_eq!(fit("2:00", 80, 2), None);
        assert_eq!(fit("2:00", 12, 9), None);
        assert_eq!(fit("half", 200, 50), None, "no glyph");
        assert_eq!(fit("", 200, 50), None);
    }

    #[test]
    fn time_left_is_rounded_up() {
        assert_eq!(left(120_000), "2:00");
        assert_eq!(left(119_001), "2:00");
        assert_eq!(left(119_000), "1:59");
        assert_eq!(left(1), "0:01");
        assert_eq!(left(0), "0:00");
        assert_eq!(left(-5), "0:00");
        assert_eq!(left(3_600_000), "60:00");
    }
}

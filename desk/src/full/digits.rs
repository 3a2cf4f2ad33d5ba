//! Digits as big as there is room for, to be read from the floor.

/// A glyph's rows, three dots wide (a colon one); a dot is two columns by one row at scale 1, which
/// is about square on most terminals.
fn glyph(of: char) -> Option<[&'static str; 5]> {
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
        ':' => [" ", "#", " ", "#", " "],
        _ => return None,
    })
}

const ROWS: u16 = 5;

/// Dots across, gaps included.
fn dots(text: &str) -> u16 {
    let each = text.chars().filter_map(glyph).map(|rows| rows[0].len() as u16 + 1);
    each.sum::<u16>().saturating_sub(1)
}

/// Columns and rows that a text takes at a scale.
pub(crate) fn size(text: &str, scale: u16) -> (u16, u16) {
    (dots(text).saturating_mul(2 * scale), ROWS.saturating_mul(scale))
}

/// The biggest scale at which a text fits, if any does.
pub(crate) fn fit(text: &str, width: u16, height: u16) -> Option<u16> {
    let fits = |scale: &u16| {
        let (wide, high) = size(text, *scale);
        wide <= width && high <= height
    };
    (1..=height / ROWS).rev().find(fits)
}

/// The text's rows at a scale. Characters that are no digit are left out.
pub(crate) fn rows(text: &str, scale: u16) -> Vec<String> {
    let scale = usize::from(scale);
    let glyphs: Vec<[&str; 5]> = text.chars().filter_map(glyph).collect();
    let row = |row: usize| {
        let each: Vec<String> = glyphs
            .iter()
            .map(|rows| {
                let dot = |dot: char| if dot == '#' { "██" } else { "  " }.repeat(scale);
                rows[row].chars().map(dot).collect()
            })
            .collect();
        each.join(&"  ".repeat(scale))
    };
    (0..usize::from(ROWS)).flat_map(|index| vec![row(index); scale]).collect()
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
    fn every_digit_can_be_told_apart_and_is_as_big_as_it_says() {
        let mut seen = std::collections::BTreeSet::new();
        for digit in "0123456789:+".chars() {
            assert!(seen.insert(rows(&digit.to_string(), 1)), "{digit} looks like another");
        }
        for scale in 1..4 {
            let (wide, high) = size("12:34", scale);
            let drawn = rows("12:34", scale);
            assert_eq!(drawn.len(), usize::from(high));
            assert!(drawn.iter().all(|row| row.chars().count() == usize::from(wide)), "{drawn:?}");
        }
    }

    #[test]
    fn the_scale_is_the_biggest_that_fits() {
        assert_eq!(fit("2:00", 80, 24), Some(3));
        assert_eq!(fit("2:00", 80, 12), Some(2));
        assert_eq!(fit("2:00", 26, 5), Some(1));
        assert_eq!(fit("2:00", 25, 5), None);
        assert_eq!(fit("2:00", 80, 4), None);
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

//! A number and its unit stay on one line.

/// What does not break a line.
pub(crate) const NO_BREAK: char = '\u{a0}';

const UNITS: [&str; 9] = ["kg", "lb", "cm", "mm", "s", "min", "h", "%", "°"];

/// A text with no break between a number and its unit.
pub(crate) fn together(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut parts = text.split(' ');
    kept.extend(parts.next());
    for part in parts {
        let is_unit = |letter: char| letter.is_alphabetic() || matches!(letter, '%' | '°');
        let word = part.split(|letter| !is_unit(letter)).next().unwrap_or(part);
        let of_number = kept.ends_with(|last: char| last.is_ascii_digit());
        kept.push(if of_number && UNITS.contains(&word) { NO_BREAK } else { ' ' });
        kept.push_str(part);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_stands_between_a_number_and_a_unit_is_kept() {
        let kept = together("62,5 kg: 2 min 5 s, 12 sets, 10 % (4 cm), kg 3 x 5 kgs");
        assert_eq!(
            kept.replace(NO_BREAK, "_"),
            "62,5_kg: 2_min 5_s, 12 sets, 10_% (4_cm), kg 3 x 5 kgs"
        );
        assert_eq!(together(" 5  kg "), " 5  kg ");
    }
}

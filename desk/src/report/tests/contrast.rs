//! Words can be told from their ground in light, in dark and on paper.

const STYLE: &str = include_str!("../../../templates/report/style.css");

/// Relative luminance, WCAG 2.2.
fn luminance(colour: &str) -> f64 {
    let full = match colour.len() {
        3 => colour.chars().flat_map(|digit| [digit, digit]).collect(),
        _ => colour.to_owned(),
    };
    let channel = |at: usize| {
        let value = f64::from(u8::from_str_radix(&full[at..at + 2], 16).unwrap()) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * channel(0) + 0.7152 * channel(2) + 0.0722 * channel(4)
}

fn contrast(one: &str, other: &str) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

fn colour<'a>(block: &'a str, name: &str) -> Option<&'a str> {
    let (_, rest) = block.split_once(&format!("--{name}: #"))?;
    Some(rest.split_once(';')?.0)
}

#[test]
fn contrast_is_enough_in_every_theme() {
    // Black on white is 21 to 1 by definition.
    assert!((contrast("000", "ffffff") - 21.0).abs() < 1e-9);
    let blocks: Vec<&str> =
        STYLE.split(":root {").skip(1).map(|split| split.split_once('}').unwrap().0).collect();
    assert_eq!(blocks.len(), 3);
    for block in &blocks {
        // What a later block does not name stands as the first says.
        let of = |name| colour(block, name).or_else(|| colour(blocks[0], name)).unwrap();
        for ground in ["paper", "band"] {
            for word in ["ink", "soft", "main", "other", "warn"] {
                let reached = contrast(of(word), of(ground));
                assert!(reached >= 4.5, "{word} on {ground}: {reached:.2}");
            }
        }
    }
}

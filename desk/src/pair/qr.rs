//! A code as a picture: half blocks in a terminal, or SVG (ISO/IEC 18004, level M).

use std::fmt::Write;

use qrcodegen::{QrCode, QrCodeEcc};

use crate::fault::{Fault, Outcome};
use crate::say;

/// Light modules around it: the standard asks for four.
const QUIET: i32 = 4;

fn encoded(text: &str) -> Outcome<QrCode> {
    QrCode::encode_text(text, QrCodeEcc::Medium)
        .map_err(|_| Fault::Typed(say::pair::too_long().into()))
}

/// The code in half blocks, dark on light whatever colours the terminal has; two modules stand in one sign.
pub(super) fn drawn(text: &str) -> Outcome<String> {
    let code = encoded(text)?;
    let side = code.size() + QUIET;
    let mut drawn = String::new();
    for y in (-QUIET..side).step_by(2) {
        // Black on white (ECMA-48, 8.3.117): where colours are off a reader needs them all the same.
        drawn += "\x1b[30;107m";
        for x in -QUIET..side {
            drawn.push(match (code.get_module(x, y), code.get_module(x, y + 1)) {
                (true, true) => '█',
                (true, false) => '▀',
                (false, true) => '▄',
                (false, false) => ' ',
            });
        }
        drawn += "\x1b[0m\n";
    }
    Ok(drawn)
}

/// The code as a picture that any browser shows and prints.
pub(super) fn svg(text: &str) -> Outcome<String> {
    let code = encoded(text)?;
    let side = code.size() + 2 * QUIET;
    let mut path = String::new();
    for y in 0..code.size() {
        for x in (0..code.size()).filter(|x| code.get_module(*x, y)) {
            let _ = write!(path, "M{},{}h1v1h-1z", x + QUIET, y + QUIET);
        }
    }
    Ok(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\">\
         <rect width=\"{side}\" height=\"{side}\" fill=\"#fff\"/><path d=\"{path}\"/></svg>\n"
    ))
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// What a reader reads in a picture of `side` modules a side, each of some pixels.
    fn read(side: usize, dark: impl Fn(usize, usize) -> bool) -> String {
        const PIXELS: usize = 6;
        let grey = |x: usize, y: usize| if dark(x / PIXELS, y / PIXELS) { 0 } else { 255 };
        let mut picture =
            rqrr::PreparedImage::prepare_from_greyscale(side * PIXELS, side * PIXELS, grey);
        let codes = picture.detect_grids();
        assert_eq!(codes.len(), 1);
        codes[0].decode().unwrap().1
    }

    /// The longest code of each step of a pairing, read back from the terminal and from the picture by another
    /// library (rqrr).
    #[test]
    fn a_reader_reads_what_is_shown() {
        for signs in [104, 340, 468] {
            let text = format!(
                "HF1:{}",
                "0123456789ABCDEFGHJKMNPQRSTVWXYZ".repeat(15)[..signs].to_owned()
            );
            let drawn = drawn(&text).unwrap();
            let plain = drawn.replace("\x1b[30;107m", "").replace("\x1b[0m", "");
            let rows: Vec<Vec<char>> = plain.lines().map(|line| line.chars().collect()).collect();
            let side = rows[0].len();
            assert!(rows.iter().all(|row| row.len() == side));
            let dark = |x: usize, y: usize| match rows.get(y / 2).map(|row| row[x]) {
                Some('█') => true,
                Some('▀') => y.is_multiple_of(2),
                Some('▄') => !y.is_multiple_of(2),
                _ => false,
            };
            assert_eq!(read(side, dark), text);
            let svg = svg(&text).unwrap();
            let modules: BTreeSet<(usize, usize)> = svg
                .split('M')
                .filter_map(|path| path.split_once("h1v1h-1z")?.0.split_once(','))
                .map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap()))
                .collect();
            assert_eq!(read(side, |x, y| modules.contains(&(x, y))), text);
        }
    }

    /// The first code fits a terminal of 80 columns and 24 rows.
    #[test]
    fn the_first_code_fits_a_usual_terminal() {
        let drawn = drawn(&format!("HF1:{}", "0".repeat(104))).unwrap();
        assert!(drawn.lines().count() <= 23, "{}", drawn.lines().count());
    }
}

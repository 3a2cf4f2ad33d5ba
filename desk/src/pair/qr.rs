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

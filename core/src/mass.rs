//! Mass as an integer that holds kilograms and pounds exactly.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

use catalogue::spoken;
use serde::{Deserialize, Serialize};

use crate::say;

/// A mass in units of 10 ng, so that both a kilogram and a pound are whole numbers.
///
/// A pound is exactly 0.453 592 37 kg (international yard and pound agreement, 1959; NIST SP 811,
/// appendix B), that is 45 359 237 000 of these units; a kilogram is 100 000 000 000. Nothing is
/// ever rounded by holding it here, and masses are compared and stored as integers only.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(transparent)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Mass {
    /// The mass in units of 10 ng.
    pub ten_ng: i64,
}

/// The unit somebody reads masses in. Their own choice, never derived from a language.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(rename_all = "lowercase")]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum MassUnit {
    /// Kilogram.
    #[default]
    Kg,
    /// International avoirdupois pound.
    Lb,
}

impl MassUnit {
    /// The unit's symbol.
    pub fn symbol(self) -> &'static str {
        match self {
            MassUnit::Kg => "kg",
            MassUnit::Lb => "lb",
        }
    }

    /// The other of the two.
    pub fn other(self) -> MassUnit {
        match self {
            MassUnit::Kg => MassUnit::Lb,
            MassUnit::Lb => MassUnit::Kg,
        }
    }

    /// One of the unit, in units of 10 ng.
    pub const fn ten_ng(self) -> i64 {
        match self {
            MassUnit::Kg => 100_000_000_000,
            MassUnit::Lb => 45_359_237_000,
        }
    }
}

/// Why a text is not a mass.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum MassError {
    /// Not of the form `92.5 kg`.
    #[error("{}", say::mass::not_a_mass())]
    Form,
    /// A number without a unit where the unit can't be guessed.
    #[error("{}", say::mass::mass_without_unit(number))]
    NoUnit {
        /// The number as it was written.
        number: String,
    },
    /// Digits beyond the third decimal.
    #[error("{}", say::mass::mass_too_fine())]
    TooFine,
    /// Beyond what any room holds.
    #[error("{}", say::mass::mass_too_large())]
    TooLarge,
}

const DECIMALS: u32 = 3;

impl Mass {
    /// No mass at all.
    pub const ZERO: Mass = Mass { ten_ng: 0 };

    /// Whole kilograms.
    pub const fn kg(kilograms: i64) -> Mass {
        Mass::thousandths(kilograms * 1000, MassUnit::Kg)
    }

    /// Whole pounds.
    pub const fn lb(pounds: i64) -> Mass {
        Mass::thousandths(pounds * 1000, MassUnit::Lb)
    }

    /// Thousandths of a unit: `thousandths(1250, Kg)` is 1.25 kg.
    pub const fn thousandths(count: i64, unit: MassUnit) -> Mass {
        Mass { ten_ng: count * (unit.ten_ng() / 1000) }
    }

    /// Reads `92.5 kg`, `205lb` or, when `bare` names a unit, a number alone.
    ///
    /// ```
    /// use holdfast_core::{Mass, MassError, MassUnit};
    ///
    /// assert_eq!(Mass::parse("92,5 kg", None), Ok(Mass::thousandths(92_500, MassUnit::Kg)));
    /// assert_eq!(Mass::parse("205", Some(MassUnit::Lb)), Ok(Mass::lb(205)));
    /// assert_eq!(Mass::parse("205", None), Err(MassError::NoUnit { number: "205".into() }));
    /// ```
    ///
    /// # Errors
    /// [`MassError`] says which part of the text is not a mass; a sign is never accepted.
    pub fn parse(text: &str, bare: Option<MassUnit>) -> Result<Mass, MassError> {
        let text = text.trim();
        let end = text
            .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
            .unwrap_or(text.len());
        let (number, unit) = text.split_at(end);
        if number.is_empty() || number.len() > 12 {
            return Err(MassError::Form);
        }
        let unit = match (unit.trim().to_ascii_lowercase().as_str(), bare) {
            ("kg", _) => MassUnit::Kg,
            ("lb" | "lbs", _) => MassUnit::Lb,
            ("", Some(unit)) => unit,
            ("", None) => return Err(MassError::NoUnit { number: number.to_owned() }),
            _ => return Err(MassError::Form),
        };
        let number = number.replace(',', ".");
        let (whole, fraction) = number.split_once('.').unwrap_or((&number, ""));
        if whole.is_empty() || fraction.contains('.') || number.ends_with('.') {
            return Err(MassError::Form);
        }
        let fraction = fraction.trim_end_matches('0');
        if fraction.len() > DECIMALS as usize {
            return Err(MassError::TooFine);
        }
        let whole: i64 = whole.parse().map_err(|_| MassError::TooLarge)?;
        let padded = format!("{fraction:0<3}");
        let thousandths: i64 = padded.parse().map_err(|_| MassError::Form)?;
        let limit = match unit {
            MassUnit::Kg => 2000,
            MassUnit::Lb => 4000,
        };
        if whole > limit || (whole == limit && thousandths > 0) {
            return Err(MassError::TooLarge);
        }
        Ok(Mass::thousandths(whole * 1000 + thousandths, unit))
    }

    /// Reads what [`Mass::parse`] reads, and the same with a minus before it: what is taken off a body.
    ///
    /// # Errors
    /// As [`Mass::parse`].
    pub fn parse_signed(text: &str, bare: Option<MassUnit>) -> Result<Mass, MassError> {
        match text.trim_start().strip_prefix(['-', '\u{2212}']) {
            Some(less) => Ok(Mass::ZERO - Mass::parse(less, bare)?),
            None => Mass::parse(text, bare),
        }
    }

    /// True when the mass is a whole number of thousandths of `unit`.
    pub fn is_exact_in(self, unit: MassUnit) -> bool {
        self.ten_ng % (unit.ten_ng() / 1000) == 0
    }

    /// The mass as a person reads it, with the decimal sign of the language spoken: `92.5 kg`, all its
    /// digits where they are at most three, otherwise rounded to a tenth (`203.9 lb`).
    pub fn text(self, unit: MassUnit) -> String {
        format!("{} {}", self.number(unit), unit.symbol())
    }

    /// [`Mass::text`] in the unit that shows it exactly, kilograms first.
    pub fn exact_text(self) -> String {
        self.text(self.exact_unit())
    }

    /// The number of [`Mass::text`] without its unit.
    pub fn number(self, unit: MassUnit) -> String {
        self.written(unit, spoken().decimal())
    }

    fn exact_unit(self) -> MassUnit {
        if self.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb }
    }

    fn written(self, unit: MassUnit, decimal: char) -> String {
        let milli = unit.ten_ng() / 1000;
        let (count, digits) = if self.is_exact_in(unit) {
            (self.ten_ng / milli, DECIMALS as usize)
        } else {
            // Half away from zero, in integers.
            let tenth = milli * 100;
            ((self.ten_ng + self.ten_ng.signum() * tenth / 2) / tenth, 1)
        };
        let scale = 10_i64.pow(digits as u32);
        // Digit by digit: a screen has dozens of these, and formatting machinery costs more than they do.
        let mut text = String::with_capacity(12);
        if count < 0 {
            text.push('-');
        }
        text += &(count.abs() / scale).to_string();
        let (mut rest, mut place) = (count.abs() % scale, scale / 10);
        if rest > 0 {
            text.push(decimal);
        }
        while rest > 0 {
            text.push(char::from(b'0' + u8::try_from(rest / place).unwrap_or(0)));
            (rest, place) = (rest % place, place / 10);
        }
        text
    }

    /// The mass in kilograms with all its digits, up to eleven decimals: `101.6466266 kg`.
    pub fn every_digit(self) -> String {
        let unit = MassUnit::Kg.ten_ng();
        let sign = if self.ten_ng < 0 { "-" } else { "" };
        let (whole, rest) = (self.ten_ng / unit, self.ten_ng % unit);
        let text = format!("{sign}{}.{:011}", whole.abs(), rest.abs());
        format!("{} kg", text.trim_end_matches('0').trim_end_matches('.'))
    }

    /// The mass as a floating number of units, for drawing only: nothing is stored from it.
    pub fn for_drawing(self, unit: MassUnit) -> f64 {
        self.ten_ng as f64 / unit.ten_ng() as f64
    }

    /// `percent` of the mass, rounded down to a unit of 10 ng.
    pub fn percent(self, percent: u32) -> Mass {
        let part = i128::from(self.ten_ng) * i128::from(percent) / 100;
        Mass { ten_ng: i64::try_from(part).unwrap_or(i64::MAX) }
    }
}

impl Add for Mass {
    type Output = Mass;
    fn add(self, other: Mass) -> Mass {
        Mass { ten_ng: self.ten_ng.saturating_add(other.ten_ng) }
    }
}

impl Sub for Mass {
    type Output = Mass;
    fn sub(self, other: Mass) -> Mass {
        Mass { ten_ng: self.ten_ng.saturating_sub(other.ten_ng) }
    }
}

impl Mul<i64> for Mass {
    type Output = Mass;
    fn mul(self, count: i64) -> Mass {
        Mass { ten_ng: self.ten_ng.saturating_mul(count) }
    }
}

impl Sum for Mass {
    fn sum<I: Iterator<Item = Mass>>(masses: I) -> Mass {
        masses.fold(Mass::ZERO, Add::add)
    }
}

impl fmt::Display for Mass {
    /// Writes the mass in the unit that shows it exactly, kilograms first, with a point in every language:
    /// for files and programs. People read [`Mass::exact_text`].
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.exact_unit();
        write!(f, "{} {}", self.written(unit, '.'), unit.symbol())
    }
}

#[cfg(test)]
mod tests {
    use catalogue::{Language, speaking};

    use super::*;

    fn kg(text: &str) -> Mass {
        Mass::parse(text, Some(MassUnit::Kg)).unwrap()
    }

    /// Derived from the exact pound of NIST SP 811, appendix B: 45 lb is 20.41165665 kg.
    #[test]
    fn pounds_are_exact() {
        assert_eq!(Mass::lb(45).ten_ng, 2_041_165_665_000);
        assert_eq!(Mass::lb(100).ten_ng, 4_535_923_700_000);
        assert_eq!(Mass::parse("1.25 lb", None).unwrap().ten_ng, 56_699_046_250);
        // "Two plates" in pounds: 225 lb is 102.05828325 kg, not 100 kg.
        assert_eq!(Mass::lb(225).ten_ng, 10_205_828_325_000);
    }

    #[test]
    fn text_shows_what_is_exact_and_rounds_the_rest_to_a_tenth() {
        assert_eq!(kg("92.5").text(MassUnit::Kg), "92.5 kg");
        assert_eq!(kg("1.25").text(MassUnit::Kg), "1.25 kg");
        // 92.5 kg is 203.9276 lb.
        assert_eq!(kg("92.5").text(MassUnit::Lb), "203.9 lb");
        assert_eq!(Mass::lb(205).text(MassUnit::Lb), "205 lb");
        assert_eq!(Mass::lb(205).to_string(), "205 lb");
        assert_eq!(Mass::kg(0).text(MassUnit::Lb), "0 lb");
        assert_eq!((Mass::kg(20) - kg("22.5")).text(MassUnit::Kg), "-2.5 kg");
    }

    #[test]
    fn people_read_the_decimal_sign_of_their_language_and_programs_a_point() {
        speaking(Language::De, || {
            assert_eq!(kg("92.5").text(MassUnit::Kg), "92,5 kg");
            assert_eq!(kg("92.5").number(MassUnit::Lb), "203,9");
            assert_eq!(Mass::thousandths(2500, MassUnit::Lb).exact_text(), "2,5 lb");
            assert_eq!(kg("92.5").to_string(), "92.5 kg");
            assert_eq!((kg("92.5") + Mass::lb(1)).every_digit(), "92.95359237 kg");
            let error = Mass::parse("5", None).unwrap_err();
            assert_eq!(error.to_string(), "Schreib die Einheit dazu: „5 kg“ oder „5 lb“.");
        });
    }

    #[test]
    fn odd_texts_are_refused() {
        for text in [
            "", "kg", "-5 kg", "NaN kg", "inf", "1e3 kg", "5 st", "1..5 kg", ".5 kg", "5. kg",
            "1.2.3 kg",
        ] {
            assert_eq!(Mass::parse(text, Some(MassUnit::Kg)), Err(MassError::Form), "{text}");
        }
        assert_eq!(Mass::parse("5", None), Err(MassError::NoUnit { number: "5".into() }));
        assert_eq!(Mass::parse("0.0005 kg", None), Err(MassError::TooFine));
        assert_eq!(Mass::parse("2000.5 kg", None), Err(MassError::TooLarge));
        assert_eq!(Mass::parse("99999999999 kg", None), Err(MassError::TooLarge));
        assert_eq!(kg("92,5"), kg("92.500"));
    }

    #[test]
    fn a_minus_is_read_only_where_it_is_asked_for() {
        for text in ["-22.5 kg", " - 22,5kg", "\u{2212}22.5 kg"] {
            let read = Mass::parse_signed(text, None).unwrap();
            assert_eq!(read, Mass::ZERO - kg("22.5"), "{text}");
            assert_eq!(Mass::parse_signed(&read.text(MassUnit::Kg), None), Ok(read));
            assert_eq!(Mass::parse(text, None), Err(MassError::Form), "{text}");
        }
        assert_eq!(Mass::parse_signed("5 lb", None), Ok(Mass::lb(5)));
        assert_eq!(Mass::parse_signed("-0 kg", None), Ok(Mass::ZERO));
        for text in ["--5 kg", "-", "+5 kg", "5- kg"] {
            assert_eq!(Mass::parse_signed(text, None), Err(MassError::Form), "{text}");
        }
        let bare = MassError::NoUnit { number: "5".into() };
        assert_eq!(Mass::parse_signed("-5", None), Err(bare));
    }

    #[test]
    fn every_plate_survives_text_and_back() {
        for thousandths in (0..60_000).step_by(125) {
            for unit in [MassUnit::Kg, MassUnit::Lb] {
                let mass = Mass::thousandths(thousandths, unit);
                assert_eq!(Mass::parse(&mass.text(unit), None), Ok(mass));
                let german = speaking(Language::De, || mass.text(unit));
                assert_eq!(Mass::parse(&german, None), Ok(mass));
            }
        }
    }
}

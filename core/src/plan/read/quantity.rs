//! Values with a unit: masses, durations, dates.

use std::ops::RangeInclusive;

use chrono::NaiveDate;
use toml::de::DeValue;

use super::duration::{self, DurationError};
use super::field::Field;
use super::words::either;
use crate::mass::{Mass, MassUnit};

/// A mass and the unit it was written in.
#[derive(Clone, Copy)]
pub(super) struct Weight {
    /// How much.
    pub(super) mass: Mass,
    /// The unit it was written in.
    pub(super) unit: MassUnit,
}

impl Field<'_> {
    /// A mass of any size, zero as well.
    pub(super) fn mass_or_none(self) -> Option<Weight> {
        let text = match self.value() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.must_be("a mass with its unit", self.quoted_with(["kg", "lb"]));
                return None;
            }
            _ => {
                self.must_be("a mass", "write it like \"92.5 kg\" or \"205 lb\"");
                return None;
            }
        };
        match Mass::parse(text, None) {
            Ok(mass) => {
                let kilograms = text.trim_end().to_ascii_lowercase().ends_with("kg");
                Some(Weight { mass, unit: if kilograms { MassUnit::Kg } else { MassUnit::Lb } })
            }
            Err(error) => {
                self.must_be("a mass", error.to_string());
                None
            }
        }
    }

    /// A mass of more than nothing.
    pub(super) fn mass(self) -> Option<Weight> {
        let weight = self.mass_or_none()?;
        if weight.mass > Mass::ZERO {
            return Some(weight);
        }
        self.must_be("more than 0", "write the mass as it is marked");
        None
    }

    /// A duration in a range of milliseconds.
    pub(super) fn duration(self, range: RangeInclusive<i64>) -> Option<i64> {
        let (least, most) = (duration::text(*range.start()), duration::text(*range.end()));
        let text = match self.value() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.must_be("a time with its unit", self.quoted_with(["s", "min"]));
                return None;
            }
            _ => {
                self.must_be("a time", "write it like \"90 s\", \"2 min\" or \"1 min 30 s\"");
                return None;
            }
        };
        match duration::parse(text) {
            Ok(ms) if range.contains(&ms) => return Some(ms),
            Ok(ms) if ms < *range.start() => self
                .must_be(&format!("from {least} to {most}"), format!("write \"{least}\" or more")),
            Ok(_) | Err(DurationError::TooLong) => self
                .must_be(&format!("from {least} to {most}"), format!("write \"{most}\" or less")),
            Err(DurationError::Form) => {
                let help = "write minutes, seconds or both: \"90 s\", \"2 min\", \"1 min 30 s\"";
                self.must_be("a time", help);
            }
        }
        None
    }

    /// How to write a bare number with one of two units.
    fn quoted_with(self, units: [&str; 2]) -> String {
        let found = self.found();
        let digits = |c: char| c.is_ascii_digit() || c == '.';
        let number = Some(found.as_str()).filter(|text| text.chars().all(digits)).unwrap_or("90");
        let examples = units.map(|unit| format!("{number} {unit}"));
        let examples = either(&[&examples[0], &examples[1]], '"');
        format!("write it in double quotes with a unit: {examples}")
    }

    /// A date of the calendar, without a time of day.
    pub(super) fn date(self) -> Option<NaiveDate> {
        if let DeValue::Datetime(written) = self.value()
            && let (Some(date), None) = (written.date, written.time)
        {
            let date =
                NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into());
            if date.is_some() {
                return date;
            }
        }
        let quoted = match self.value() {
            DeValue::String(text) => text.trim().parse::<NaiveDate>().ok(),
            _ => None,
        };
        let help = match quoted {
            Some(date) => format!("write it without quotes: {date}"),
            None => "write year-month-day without quotes, such as 2026-11-02".to_owned(),
        };
        self.must_be("a date", help);
        None
    }
}

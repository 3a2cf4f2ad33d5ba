//! Values with a unit: masses, durations, dates.

use std::ops::RangeInclusive;

use chrono::NaiveDate;
use toml::de::DeValue;

use super::duration::{self, DurationError};
use super::field::Field;
use crate::mass::{Mass, MassError, MassUnit};
use crate::plan::Lifted;
use crate::say;

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
        self.parsed_mass(Mass::parse)
    }

    /// A load as what is lifted has it: with a minus what is taken off a body, zero only on a body, above
    /// zero all else. Any of these where it is not known what is lifted.
    pub(super) fn load(self, lifted: Option<Lifted>) -> Option<Weight> {
        match lifted {
            None => self.parsed_mass(Mass::parse_signed),
            Some(Lifted::Bar | Lifted::Bell | Lifted::Pair | Lifted::Machine | Lifted::Body) => {
                self.mass()
            }
            Some(Lifted::Added) => self.mass_or_none(),
            Some(Lifted::Assisted) => {
                let weight = self.parsed_mass(Mass::parse_signed)?;
                if weight.mass <= Mass::ZERO {
                    return Some(weight);
                }
                self.cant_be(say::plan::write_minus(format!("-{}", weight.mass.text(weight.unit))));
                None
            }
        }
    }

    fn parsed_mass(
        self,
        parse: fn(&str, Option<MassUnit>) -> Result<Mass, MassError>,
    ) -> Option<Weight> {
        let text = match self.value() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.cant_be(self.quoted_with(["kg", "lb"]));
                return None;
            }
            _ => {
                self.cant_be(say::plan::write_mass());
                return None;
            }
        };
        match parse(text, None) {
            Ok(mass) => {
                let kilograms = text.trim_end().to_ascii_lowercase().ends_with("kg");
                Some(Weight { mass, unit: if kilograms { MassUnit::Kg } else { MassUnit::Lb } })
            }
            Err(error) => {
                self.cant_be(match error {
                    MassError::Form => say::plan::write_mass().to_owned(),
                    MassError::NoUnit { number } => {
                        say::plan::add_unit(format!("{number} kg"), format!("{number} lb"))
                    }
                    MassError::TooFine | MassError::TooLarge => error.to_string(),
                });
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
        self.cant_be(say::plan::mass_above_zero());
        None
    }

    /// A duration in a range of milliseconds.
    pub(super) fn duration(self, range: RangeInclusive<i64>) -> Option<i64> {
        let text = match self.value() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) => {
                self.cant_be(self.quoted_with(["s", "min"]));
                return None;
            }
            _ => {
                self.cant_be(say::plan::write_time());
                return None;
            }
        };
        match duration::parse(text) {
            Ok(ms) if range.contains(&ms) => return Some(ms),
            Ok(_) | Err(DurationError::TooLong) => {
                let (least, most) = (duration::text(*range.start()), duration::text(*range.end()));
                self.cant_be(say::plan::write_time_between(least, most));
            }
            Err(DurationError::Form) => self.cant_be(say::plan::write_time()),
        }
        None
    }

    /// How to write a bare number with one of two units.
    fn quoted_with(self, units: [&str; 2]) -> String {
        let found = self.found();
        let digits = |c: char| c.is_ascii_digit() || c == '.';
        let number = Some(found.as_str()).filter(|text| text.chars().all(digits)).unwrap_or("90");
        let [one, other] = units.map(|unit| format!("{number} {unit}"));
        say::plan::quote_with_unit(one, other)
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
            Some(date) => say::plan::unquote(date),
            None => say::plan::write_date().to_owned(),
        };
        self.cant_be(help);
        None
    }
}

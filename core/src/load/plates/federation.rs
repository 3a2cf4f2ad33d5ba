//! What two federations say about bars, collars and discs. Rooms may own anything; this is for
//! rooms with competition equipment, and for checks.
//!
//! Sources: International Weightlifting Federation (IWF), Technical and Competition Rules and
//! Regulations, section 3.3, read in copies by member federations; International Powerlifting
//! Federation (IPF), Technical Rules Book, read in an older edition in translation. What is marked
//! "from memory" was found in no text.

use crate::mass::{Mass, MassUnit};
use crate::plan::keyword;

/// A federation with rules for its equipment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Federation {
    /// International Weightlifting Federation.
    Iwf,
    /// International Powerlifting Federation.
    Ipf,
}

/// A competition bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Who lifts it.
    pub used_by: &'static str,
    /// Without collars.
    pub mass: Mass,
    /// Overall length in mm; at most that for the IPF.
    pub length_mm: u32,
    /// Diameter of the shaft, least and most, in mm.
    pub shaft_mm: (u32, u32),
    /// Diameter of the sleeves, least and most, in mm.
    pub sleeve_mm: (u32, u32),
}

/// A competition disc.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Disc {
    /// What is written on it.
    pub mass: Mass,
    /// Its colour; nothing where the rules allow any.
    pub colour: Option<Colour>,
}

keyword! {
    /// The colours of discs.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Colour {
        Red = "red",
        Blue = "blue",
        Yellow = "yellow",
        Green = "green",
        White = "white",
    }
}

/// The colour of a disc by the federations' rules; none where they give none. What both have, they have
/// in one colour.
pub fn colour_of(plate: Mass) -> Option<Colour> {
    Federation::Iwf.colour(plate).or_else(|| Federation::Ipf.colour(plate))
}

/// How far a part may be from the mass written on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tolerance {
    /// Lighter by at most this.
    pub under: Mass,
    /// Heavier by at most this.
    pub over: Mass,
}

const fn grams(grams: i64) -> Mass {
    Mass::thousandths(grams, MassUnit::Kg)
}

const fn disc(grams_each: i64, colour: Colour) -> Disc {
    Disc { mass: grams(grams_each), colour: Some(colour) }
}

const fn plain(grams_each: i64) -> Disc {
    Disc { mass: grams(grams_each), colour: None }
}

impl Federation {
    /// The bars. IWF: section 3.3, men's and women's. IPF: one, of at most 2.2 m, which with its
    /// collars is 25 kg.
    pub fn bars(self) -> &'static [Bar] {
        const IWF: [Bar; 2] = [
            Bar {
                used_by: "men",
                mass: Mass::kg(20),
                length_mm: 2200,
                shaft_mm: (28, 28),
                sleeve_mm: (50, 50),
            },
            Bar {
                used_by: "women",
                mass: Mass::kg(15),
                length_mm: 2010,
                shaft_mm: (25, 25),
                sleeve_mm: (50, 50),
            },
        ];
        const IPF: [Bar; 1] = [Bar {
            used_by: "everybody",
            mass: Mass::kg(20),
            length_mm: 2200,
            shaft_mm: (28, 29),
            sleeve_mm: (50, 52),
        }];
        match self {
            Federation::Iwf => &IWF,
            Federation::Ipf => &IPF,
        }
    }

    /// Both collars together, which always count: 2.5 kg each. IWF: section 3.3. IPF: what is left
    /// of the 25 kg of bar and collars.
    pub const fn collars(self) -> Mass {
        Mass::kg(5)
    }

    /// The discs, heaviest first. IWF: masses and colours by section 3.3 and the Olympic
    /// broadcaster's page on equipment. IPF: masses by the rules (older texts have a disc of 50 kg
    /// too); colours of 25, 20 and 15 kg from memory, any colour up to 10 kg by the rules.
    pub fn discs(self) -> &'static [Disc] {
        const IWF: [Disc; 10] = [
            disc(25_000, Colour::Red),
            disc(20_000, Colour::Blue),
            disc(15_000, Colour::Yellow),
            disc(10_000, Colour::Green),
            disc(5_000, Colour::White),
            disc(2_500, Colour::Red),
            disc(2_000, Colour::Blue),
            disc(1_500, Colour::Yellow),
            disc(1_000, Colour::Green),
            disc(500, Colour::White),
        ];
        const IPF: [Disc; 7] = [
            disc(25_000, Colour::Red),
            disc(20_000, Colour::Blue),
            disc(15_000, Colour::Yellow),
            plain(10_000),
            plain(5_000),
            plain(2_500),
            plain(1_250),
        ];
        match self {
            Federation::Iwf => &IWF,
            Federation::Ipf => &IPF,
        }
    }

    /// The colour of a disc of this mass; nothing for one the federation has not or leaves free.
    /// Plates marked in pounds have no colour in any rule.
    pub fn colour(self, mass: Mass) -> Option<Colour> {
        self.discs().iter().find(|disc| disc.mass == mass)?.colour
    }

    /// How far a part may be from its mass, rounded down to 10 ng. IWF: heavier than 5 kg, 0.1 %
    /// over and 0.05 % under; up to 5 kg, 10 g over and nothing under: from memory. IPF: within
    /// 0.25 % or 10 g, taken here as the wider of the two.
    pub fn tolerance(self, mass: Mass) -> Tolerance {
        let share = |of_100_000: i64| Mass { ten_ng: mass.ten_ng / 100_000 * of_100_000 };
        match self {
            Federation::Iwf if mass > Mass::kg(5) => {
                Tolerance { under: share(50), over: share(100) }
            }
            Federation::Iwf => Tolerance { under: Mass::ZERO, over: grams(10) },
            Federation::Ipf => {
                let wide = share(250).max(grams(10));
                Tolerance { under: wide, over: wide }
            }
        }
    }
}

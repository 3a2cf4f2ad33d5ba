//! Movements, stretches, and the reasons somebody takes another one.

use serde::{Deserialize, Serialize};

use super::Exercise;
use super::keyword::keyword;

/// A movement that pieces of a block refer to by its key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Movement {
    /// The key pieces use, for example `back-squat`.
    pub key: String,
    /// The name on screen.
    pub name: String,
    /// What the body does.
    pub pattern: Pattern,
    /// What carries the load.
    pub lifted: Lifted,
    /// The name of the kit's bar it is done with, where the plan names one.
    #[serde(default)]
    pub bar: Option<String>,
    /// The name of the kit's machine it is done on; the kit's first one where the plan names none.
    #[serde(default)]
    pub machine: Option<String>,
    /// Alternatives, in the coach's order.
    pub options: Vec<MovementOption>,
}

/// An alternative to a movement, tagged with the reason somebody would take it.
///
/// Its loads are a history of their own: see [`Movement::exercise`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct MovementOption {
    /// The key, unique within its movement.
    pub key: String,
    /// The name on screen.
    pub name: String,
    /// Why somebody takes it.
    pub because: Because,
    /// What the body does in it, where that differs from the movement.
    pub pattern: Pattern,
    /// What carries the load, where it differs from the movement.
    pub lifted: Lifted,
    /// The name of the kit's bar it is done with, where that differs from the movement.
    #[serde(default)]
    pub bar: Option<String>,
    /// The name of the kit's machine it is done on, where that differs from the movement.
    #[serde(default)]
    pub machine: Option<String>,
}

impl Movement {
    /// Finds an option by its key.
    pub fn option(&self, key: &str) -> Option<&MovementOption> {
        self.options.iter().find(|option| option.key == key)
    }

    /// What a lift's history is kept under: the movement, or the option taken for it.
    pub fn exercise(&self, option: Option<&str>) -> Exercise {
        Exercise { movement: self.key.clone(), option: option.map(str::to_owned) }
    }
}

/// A stretch that hold pieces refer to by its key.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stretch {
    /// The key pieces use, for example `hip-flexor`.
    pub key: String,
    /// The name on screen.
    pub name: String,
    /// The part of the body, for minutes under stretch.
    pub region: String,
}

keyword! {
    /// What the body does in a movement. Common practice, no source: the usual grouping of lifts.
    Pattern {
        Squat = "squat",
        Hinge = "hinge",
        Push = "push",
        Pull = "pull",
        Carry = "carry",
        Step = "step",
        Trunk = "trunk",
    }
}

keyword! {
    /// What carries the load of a movement.
    Lifted {
        /// A bar loaded with plates.
        Bar = "bar",
        /// A one-piece weight.
        Bell = "bell",
        /// Two one-piece weights of one mass, one in each hand: the load is the mass of one.
        Pair = "pair",
        /// Body mass alone.
        Body = "body",
        /// Body mass and what hangs on it: the load is what hangs, from nothing upward. Nobody's body
        /// mass is asked.
        Added = "added",
        /// Body mass less what a band or a machine takes off: the load is that, with a minus, up to
        /// nothing.
        Assisted = "assisted",
        /// The stack of a machine.
        Machine = "machine",
    }
}

impl Lifted {
    /// True when the load is added to a body or taken off it: no percent of such a load means anything
    /// near zero.
    pub fn is_on_a_body(self) -> bool {
        matches!(self, Lifted::Added | Lifted::Assisted)
    }
}

keyword! {
    /// Why somebody takes an option.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Because {
        Grip = "grip",
        LowBack = "low-back",
        OverheadRange = "overhead-range",
        SoreLegs = "sore-legs",
        NoEquipment = "no-equipment",
    }
}

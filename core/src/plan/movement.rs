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
        /// Body mass alone.
        Body = "body",
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

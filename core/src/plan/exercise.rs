//! What a history is kept under.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A movement, or an option of it: what somebody really does, and what their history is kept under.
/// Of a stretch, which has no options, the stretch's own key.
///
/// Written as `movement` or `movement/option`; keys have no slash.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct Exercise {
    /// The movement's key.
    pub movement: String,
    /// The option's key, where one is taken.
    pub option: Option<String>,
}

impl Exercise {
    /// A movement, or a stretch, itself.
    pub fn of(movement: &str) -> Exercise {
        Exercise { movement: movement.to_owned(), option: None }
    }

    /// An option of a movement.
    pub fn option_of(movement: &str, option: &str) -> Exercise {
        Exercise { movement: movement.to_owned(), option: Some(option.to_owned()) }
    }

    /// Reads what [`Exercise`] writes; any text is one.
    pub fn from_text(text: &str) -> Exercise {
        match text.split_once('/') {
            Some((movement, option)) => Exercise::option_of(movement, option),
            None => Exercise::of(text),
        }
    }

    /// True when both are one movement, whatever option is taken.
    pub fn is_near(&self, other: &Exercise) -> bool {
        self.movement == other.movement
    }
}

impl std::fmt::Display for Exercise {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match &self.option {
            Some(option) => write!(f, "{}/{option}", self.movement),
            None => f.write_str(&self.movement),
        }
    }
}

impl Serialize for Exercise {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Exercise {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Exercise, D::Error> {
        String::deserialize(deserializer).map(|text| Exercise::from_text(&text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_reads_back_and_options_are_near_their_movement() {
        let (squat, box_squat) = (Exercise::of("squat"), Exercise::option_of("squat", "box"));
        for (exercise, text) in [(&squat, "squat"), (&box_squat, "squat/box")] {
            assert_eq!(exercise.to_string(), text);
            assert_eq!(Exercise::from_text(text), *exercise);
            let json = serde_json::to_string(exercise).unwrap();
            assert_eq!(json, format!("\"{text}\""));
            assert_eq!(serde_json::from_str::<Exercise>(&json).unwrap(), *exercise);
        }
        assert!(squat.is_near(&box_squat) && !squat.is_near(&Exercise::of("row")));
    }
}

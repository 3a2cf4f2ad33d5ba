//! Care: where it can hurt, what calls for help, and the usual cautions.
//!
//! Nothing here diagnoses. It stops progression, says what is usually said, and sends people to
//! those who are licensed to judge.

mod advice;
mod loaded;
mod long_hold;

use crate::plan::keyword;

pub use advice::{Advice, Felt, STOP_FROM, advice_for, always};
pub use loaded::is_loaded_by;
pub use long_hold::{LONG_HOLD_MS, LongHold, long_holds_before_strength};

keyword! {
    /// Where discomfort is felt.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Place {
        Neck = "neck",
        Shoulder = "shoulder",
        Elbow = "elbow",
        Wrist = "wrist",
        UpperBack = "upper-back",
        LowBack = "low-back",
        Hip = "hip",
        Knee = "knee",
        Ankle = "ankle",
        Muscle = "muscle",
        Other = "other",
    }
}

keyword! {
    /// Signs that call for care at once; those of [`Sign::ASKED`] are asked for.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Sign {
        /// Numbness between the legs: public pages of the NHS on cauda equina.
        SaddleNumbness = "saddle-numbness",
        /// Trouble with bladder or bowel: public pages of the NHS on cauda equina.
        BladderOrBowel = "bladder-or-bowel",
        /// Weakness or numbness in a leg or arm. Of a leg: public pages of the NHS on cauda equina; of an
        /// arm: common practice, no source.
        LegWeakness = "leg-weakness",
        /// Pain into both legs: public pages of the NHS on cauda equina. Read and shown where a journal has
        /// it, but not asked for any more.
        PainInBothLegs = "pain-in-both-legs",
        /// Dark urine after training, also days later: public text of CDC/NIOSH on rhabdomyolysis.
        DarkUrine = "dark-urine",
        /// Chest pain: common practice, no source.
        ChestPain = "chest-pain",
        /// Dizziness or fainting: common practice, no source.
        Dizziness = "dizziness",
    }
}

impl Sign {
    /// The signs that are asked for, in this order: the one list of all screens.
    pub const ASKED: [Sign; 6] = [
        Sign::ChestPain,
        Sign::Dizziness,
        Sign::SaddleNumbness,
        Sign::BladderOrBowel,
        Sign::LegWeakness,
        Sign::DarkUrine,
    ];
}

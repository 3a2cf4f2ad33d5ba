//! Care: where it can hurt, what calls for help, and the usual cautions.
//!
//! Nothing here diagnoses. It stops progression, says what is usually said, and sends people to
//! those who are licensed to judge.

mod advice;
mod long_hold;

use crate::plan::keyword;

pub use advice::{ALWAYS, Advice, STOP_FROM, advice_for};
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
    /// Signs that call for care at once.
    ///
    /// The first four are the usual emergency signs with back pain (public pages of the NHS on
    /// cauda equina); dark urine is from public CDC/NIOSH text on rhabdomyolysis; chest pain is
    /// common practice, no source.
    #[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
    Sign {
        SaddleNumbness = "saddle-numbness",
        BladderOrBowel = "bladder-or-bowel",
        LegWeakness = "leg-weakness",
        PainInBothLegs = "pain-in-both-legs",
        DarkUrine = "dark-urine",
        ChestPain = "chest-pain",
    }
}

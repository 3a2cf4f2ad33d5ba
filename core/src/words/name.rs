//! Names of what plans and journals write as keywords.

use crate::care::{Place, Sign};
use crate::load::Decision;
use crate::plan::{Because, Pattern, Protocol};
use crate::say::name;

pub(crate) fn because(because: Because) -> &'static str {
    match because {
        Because::Grip => name::because_grip(),
        Because::LowBack => name::because_low_back(),
        Because::OverheadRange => name::because_overhead_range(),
        Because::SoreLegs => name::because_sore_legs(),
        Because::NoEquipment => name::because_no_equipment(),
    }
}

pub(crate) fn place(place: Place) -> &'static str {
    match place {
        Place::Neck => name::neck(),
        Place::Shoulder => name::shoulder(),
        Place::Elbow => name::elbow(),
        Place::Wrist => name::wrist(),
        Place::UpperBack => name::upper_back(),
        Place::LowBack => name::low_back(),
        Place::Hip => name::hip(),
        Place::Knee => name::knee(),
        Place::Ankle => name::ankle(),
        Place::Muscle => name::muscle(),
        Place::Other => name::elsewhere(),
    }
}

pub(crate) fn sign(sign: Sign) -> &'static str {
    match sign {
        Sign::ChestPain => name::chest_pain(),
        Sign::Dizziness => name::dizziness(),
        Sign::SaddleNumbness => name::saddle_numbness(),
        Sign::BladderOrBowel => name::bladder_or_bowel(),
        Sign::LegWeakness => name::limb_weakness(),
        Sign::DarkUrine => name::dark_urine(),
        Sign::PainInBothLegs => name::pain_in_both_legs(),
    }
}

pub(crate) fn protocol(protocol: Protocol) -> &'static str {
    match protocol {
        Protocol::SitAndReach => name::sit_and_reach(),
        Protocol::FingertipToFloor => name::fingertip_to_floor(),
        Protocol::KneeToWall => name::knee_to_wall(),
        Protocol::ShinAngle => name::shin_angle(),
    }
}

pub(crate) fn decision(decision: Decision) -> &'static str {
    match decision {
        Decision::Accept => name::accepted(),
        Decision::Change => name::changed(),
        Decision::Refuse => name::refused(),
    }
}

pub(super) fn pattern(pattern: Pattern) -> &'static str {
    match pattern {
        Pattern::Squat => name::squat(),
        Pattern::Hinge => name::hinge(),
        Pattern::Push => name::push(),
        Pattern::Pull => name::pull(),
        Pattern::Carry => name::carry(),
        Pattern::Step => name::step(),
        Pattern::Trunk => name::trunk(),
    }
}

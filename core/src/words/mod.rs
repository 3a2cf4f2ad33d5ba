//! Every sentence a person reads that is made from data, in one place, so that all shells say the
//! same thing.

mod able;
mod clock;
mod key;
mod load;
mod logged;
mod motion;
mod name;
mod note;
mod phone;
mod piece;
mod plain;
mod plates;
mod today;
mod training_max;
mod why;

pub(crate) use able::{able, ended, expected_reps, trend};
pub(crate) use clock::{
    before_side, cue, digits, fewer_reps, held_side, hold_question, interval_question, long_ago,
    next_cue, phase, rest, suggested_rest, to_side, went_by, window_cue,
};
pub(crate) use key::{KeyFor, ask, key, key_more};
pub(crate) use load::{load_text, plates_short, plates_text, spared, wrong_load};
pub(crate) use logged::{Names, logged, logged_set, put_off};
pub(crate) use motion::{dose, judged, load_compared, long_hold, range_trend};
pub(crate) use name::{because, decision, place, protocol, sign};
pub(crate) use note::{coachs_note_on, coachs_view, noted_privately, own_note, place_of};
pub(crate) use phone::{bar_from_inside, floor_digits, over_by, to_go};
pub(crate) use piece::{
    Remarks, hold_heading, interval_heading, other_days, progress, reps, set_asked, set_done,
    set_line, strength_heading, warm_up, window_asked, window_done,
};
pub(crate) use plain::{
    clock_time, day, decimals, flagged, flagged_in, list, reading, short_day, side, side_of_two,
    tenths, waiting,
};
pub(crate) use plates::{change_text, exact_text, handling_text, plates_alone, ramp_error};
pub(crate) use today::read_on;
pub(crate) use why::{also, is_a_tenth, why};

//! Interval pieces: stations against the clock.

use super::duration::{self, LONGEST, MINUTE, SECOND};
use super::field::Field;
use super::fields::Fields;
use super::given::Given;
use super::part::Part;
use crate::plan::{Interval, Lifted, Station};
use crate::say;

const MOST_ROUNDS: u32 = 60;
const MOST_STATIONS: usize = 20;
const MOST_REPS: u32 = 500;
const USUAL_MARGIN: i64 = 10 * SECOND;
const STATION: &str = "station = [{ movement = \"bell-swing\", reps = 15, load = \"16 kg\" }]";

/// Reads what is particular to an interval piece.
pub(super) fn read(mut fields: Fields<'_>, given: &Given) -> Option<Interval> {
    fields.rename(Part::Interval);
    let window = fields.required("window", "window = \"1 min\"");
    let window = window.and_then(|window| window.duration(5 * SECOND..=30 * MINUTE));
    let rounds_field = fields.required("rounds", "rounds = 3");
    let rounds = rounds_field.and_then(|rounds| rounds.whole(1..=MOST_ROUNDS));
    let stations = fields.required("station", STATION);
    let stations = stations.and_then(|field| field.list(1..=MOST_STATIONS, STATION));
    let count = stations.as_ref().map(Vec::len);
    let stations: Option<Vec<Option<Station>>> =
        stations.map(|stations| stations.into_iter().map(|field| station(field, given)).collect());
    let margin = fields.optional("margin");
    let margin = match margin {
        Some(margin) => spare(margin, window),
        None => window.map(usual_margin),
    };
    fields.finish();
    let (window_ms, rounds, count) = (window?, rounds?, count?);
    let total = window_ms.saturating_mul(i64::from(rounds)).saturating_mul(count as i64);
    if total > LONGEST {
        let (window, total) = (duration::text(window_ms), duration::text(total));
        let what = say::plan_day::piece_too_long(rounds, count, window, total);
        let help = say::plan_day::write_fewer_rounds(duration::text(LONGEST));
        rounds_field?.wrong(what, help);
        return None;
    }
    let stations: Option<Vec<Station>> = stations?.into_iter().collect();
    Some(Interval { window_ms, rounds, stations: stations?, margin_ms: margin? })
}

/// Ten seconds, or half of a window too short for that.
fn usual_margin(window: i64) -> i64 {
    if USUAL_MARGIN < window { USUAL_MARGIN } else { window / 2 }
}

fn spare(field: Field<'_>, window: Option<i64>) -> Option<i64> {
    let margin = field.duration(0..=30 * MINUTE)?;
    let Some(window) = window.filter(|window| margin >= *window) else { return Some(margin) };
    field.cant_be(say::plan_day::shorter_than_window(duration::text(window)));
    None
}

fn station(field: Field<'_>, given: &Given) -> Option<Station> {
    let mut fields = Fields::of(field, Part::Station, || say::plan::write_example(STATION))?;
    let movement = fields.required("movement", "movement = \"bell-swing\"");
    let movement = movement.and_then(|field| given.movements.find(field));
    let reps = fields.required("reps", "reps = 15").and_then(|reps| reps.whole(1..=MOST_REPS));
    let load = fields.optional("load");
    fields.finish();
    let carrier = movement.and_then(|movement| movement.carrier());
    let lifted = carrier.as_ref().map(|carrier| carrier.lifted);
    let weight = load.map(|load| load.load(lifted));
    if let (Some(load), Some(carrier)) = (load, &carrier) {
        if carrier.lifted == Lifted::Body {
            load.wrong(say::plan_day::load_for_body(), say::plan_day::leave_load_out());
        } else if let (true, Some(Some(weight))) =
            (given.room.check_has(load, carrier.lifted), weight)
        {
            given.room.check_load(load, weight, carrier);
        }
    }
    let load = match weight {
        Some(weight) => Some(weight?.mass),
        None => None,
    };
    Some(Station { movement: movement?.key(), reps: reps?, load })
}

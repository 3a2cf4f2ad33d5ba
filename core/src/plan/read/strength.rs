//! Strength pieces: a movement, its set scheme and the rest between sets.

use super::duration::MINUTE;
use super::field::Field;
use super::fields::Fields;
use super::given::{Given, MOST_REPS, MOST_SETS};
use super::load;
use super::part::Part;
use crate::plan::{LoadRule, Scheme, Strength};

const USUAL_REST: i64 = 2 * MINUTE;
const LONGEST_REST: i64 = 30 * MINUTE;

/// Reads what is particular to a strength piece.
pub(super) fn read(mut fields: Fields<'_>, given: &Given) -> Option<Strength> {
    fields.rename(Part::Strength);
    let movement = fields.required("movement", "movement = \"back-squat\"");
    let movement = movement.and_then(|field| given.movements.find(field));
    let reps = fields.required("reps", "reps = [8, 6, 5, 5]").and_then(reps);
    let open = fields.optional("open").map_or(Some(false), Field::flag);
    let rest = fields.optional("rest");
    let rest_said = rest.is_some();
    let rest = rest.map_or(Some(USUAL_REST), |rest| rest.duration(0..=LONGEST_REST));
    let track = fields.optional("track").map(Field::name);
    let mut carrier = movement.and_then(|movement| movement.carrier());
    let bar = fields.optional("bar");
    let bar = bar.map(|bar| given.room.bar(bar, carrier.as_ref().map(|carrier| carrier.lifted)));
    if let (Some(carrier), Some(bar)) = (&mut carrier, &bar) {
        carrier.bar.clone_from(bar);
    }
    // A bar that nobody knows is reported; whether loads can be built on it nobody can say.
    let carrier = carrier.filter(|_| !matches!(bar, Some(None)));
    let load = fields.optional("load").map_or(Some((LoadRule::Free, Vec::new())), |field| {
        load::read(field, reps.as_deref(), carrier.as_ref(), &given.room)
    });
    fields.finish();
    let scheme = Scheme { reps: reps?, open: open? };
    let told = |name: Option<Option<String>>| name.map_or(Some(None), |name| name.map(Some));
    let (track, bar, (load, start)) = (told(track)?, told(bar)?, load?);
    let movement = movement?.key();
    Some(Strength { movement, scheme, rest_ms: rest?, rest_said, track, bar, load, start })
}

fn reps(field: Field<'_>) -> Option<Vec<u32>> {
    let sets = field.list(1..=MOST_SETS, "reps = [8, 6, 5, 5]")?.into_iter();
    let sets: Vec<Option<u32>> = sets.map(|set| set.whole(1..=MOST_REPS)).collect();
    sets.into_iter().collect()
}

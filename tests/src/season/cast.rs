//! The forty: what they lift, in which room, by which plan. Each has a plan of their own, which the real plan
//! reader reads.

use holdfast_core::load::Prepared;
use holdfast_core::plan::{Block, Builds, LoadRule, PieceKind, Scheme, Strength, read_plan};
use holdfast_core::{Mass, MassUnit};

use super::expected::LIFTERS;
use super::lifter::{Athlete, Level};
use super::seen::Group;
use crate::lifters::Chance;

/// The Monday the season begins.
pub(super) const STARTS: &str = "2026-11-02";

/// One of the forty.
pub(super) struct Member {
    pub(super) name: String,
    pub(super) group: Group,
    /// The plan's text.
    pub(super) plan: String,
    pub(super) block: Block,
    pub(super) builds: Builds,
    pub(super) unit: MassUnit,
    /// Weekdays trained on, counted from Monday.
    pub(super) on: &'static [u64],
    /// What is lifted beside the load, kilograms.
    pub(super) body_kg: f64,
    pub(super) athlete: Athlete,
}

const RICH: &str = r#"bar = [{ name = "long bar", mass = "20 kg" }]
plate = [
  { mass = "25 kg", count = 8 }, { mass = "20 kg", count = 4 }, { mass = "15 kg", count = 2 },
  { mass = "10 kg", count = 4 }, { mass = "5 kg", count = 4 }, { mass = "2.5 kg", count = 4 },
  { mass = "1.25 kg", count = 2 },
]"#;
const POUNDS: &str = r#"bar = [{ name = "pound bar", mass = "45 lb" }]
plate = [
  { mass = "45 lb", count = 8 }, { mass = "25 lb", count = 2 }, { mass = "10 lb", count = 4 },
  { mass = "5 lb", count = 4 }, { mass = "2.5 lb", count = 4 },
]"#;
const TENS: &str = r#"bar = [{ name = "long bar", mass = "20 kg" }]
plate = [{ mass = "20 kg", count = 8 }, { mass = "10 kg", count = 2 }, { mass = "5 kg", count = 2 }]"#;
/// 20, 30, 60, 70, 100, 110 and so on: what is left of a kit.
const HOLES: &str = r#"bar = [{ name = "long bar", mass = "20 kg" }]
plate = [{ mass = "20 kg", count = 8 }, { mass = "15 kg", count = 2 }, { mass = "5 kg", count = 2 }]"#;
const KETTLEBELLS: &str = r#"bell = [
  { mass = "8 kg", count = 2 }, { mass = "12 kg", count = 2 }, { mass = "16 kg", count = 2 },
  { mass = "20 kg", count = 2 }, { mass = "24 kg", count = 2 }, { mass = "32 kg", count = 1 },
  { mass = "40 kg", count = 1 },
]"#;
const DUMBBELLS: &str = r#"bell = [
  { mass = "4 kg", count = 2 }, { mass = "6 kg", count = 2 }, { mass = "8 kg", count = 2 },
  { mass = "10 kg", count = 2 }, { mass = "12.5 kg", count = 2 }, { mass = "15 kg", count = 2 },
  { mass = "17.5 kg", count = 2 }, { mass = "20 kg", count = 2 }, { mass = "25 kg", count = 2 },
  { mass = "30 kg", count = 2 }, { mass = "35 kg", count = 2 },
]"#;
const BELT: &str = r#"plate = [
  { mass = "1.25 kg", count = 2 }, { mass = "2.5 kg", count = 2 }, { mass = "5 kg", count = 2 },
  { mass = "10 kg", count = 4 }, { mass = "20 kg", count = 2 },
]"#;
const BANDS: &str = r#"assistance = ["35 kg", "20 kg", "10 kg"]"#;
const COUNTERWEIGHT: &str = r#"assistance = { from = "5 kg", to = "60 kg", step = "5 kg" }"#;

/// Reps set by set, and whether the last set is open.
const SCHEMES: [(&str, bool); 8] = [
    ("[5, 5, 5]", false),
    ("[5, 5, 5]", true),
    ("[8, 8, 8]", false),
    ("[8, 6, 5]", true),
    ("[10, 10, 10]", true),
    ("[6, 6, 6, 6]", false),
    ("[3, 3, 3, 3]", false),
    ("[12, 10, 8]", true),
];

/// Weekdays for one to three sessions a week.
const DAYS: [(&[u64], &str); 3] = [
    (&[1], r#"["tuesday"]"#),
    (&[0, 3], r#"["monday", "thursday"]"#),
    (&[0, 2, 4], r#"["monday", "wednesday", "friday"]"#),
];

/// Draws the forty; the groups are the same in every season.
pub(super) fn cast(chance: &mut Chance) -> Vec<Member> {
    (0..LIFTERS).map(|which| member(chance, which)).collect()
}

fn group(which: usize) -> Group {
    match which {
        0..9 => Group::Novice,
        9..15 => Group::Trained,
        15..19 => Group::Strong,
        19..24 => Group::Pounds,
        24..28 => Group::Holes,
        28..32 => Group::Bells,
        32..35 => Group::Added,
        35..37 => Group::Assisted,
        37..39 => Group::Percent,
        _ => Group::Fixed,
    }
}

fn member(chance: &mut Chance, which: usize) -> Member {
    let group = group(which);
    let second = which % 2 == 1;
    let level = match group {
        Group::Novice | Group::Assisted => Level::Novice,
        Group::Strong => Level::Strong,
        _ if chance.happens(0.4) => Level::Novice,
        _ => Level::Trained,
    };
    let (lifted, kit) = match group {
        Group::Novice | Group::Trained | Group::Strong | Group::Percent | Group::Fixed => {
            ("bar", RICH)
        }
        Group::Pounds => ("bar", POUNDS),
        Group::Holes if second => ("bar", HOLES),
        Group::Holes => ("bar", TENS),
        Group::Bells if second => ("pair", DUMBBELLS),
        Group::Bells => ("bell", KETTLEBELLS),
        Group::Added => ("added", BELT),
        Group::Assisted if second => ("assisted", BANDS),
        Group::Assisted => ("assisted", COUNTERWEIGHT),
    };
    let body_kg = match group {
        Group::Added | Group::Assisted => chance.between(55.0, 95.0),
        _ => 0.0,
    };
    let max = match (group, level) {
        (Group::Bells, _) => chance.between(18.0, 38.0),
        (Group::Added, _) => body_kg * chance.between(1.25, 1.6),
        (Group::Assisted, _) => body_kg * chance.between(0.8, 1.0),
        (Group::Holes, _) => chance.between(80.0, 140.0),
        (_, Level::Novice) => chance.between(50.0, 95.0),
        (_, Level::Trained) => chance.between(100.0, 160.0),
        (_, Level::Strong) => chance.between(170.0, 230.0),
    };
    let (on, written) = DAYS[chance.pick(&[0, 1, 1, 1, 2]) as usize];
    let athlete = Athlete::draw(chance, level, max, on.len() as u32);
    let (reps, open) = SCHEMES[chance.whole(0, 7) as usize];
    let load = rule(group, &athlete, open, reps);
    let easy = if chance.happens(0.5) {
        let (first, percent) = (chance.whole(5, 8), 5 * chance.whole(2, 8));
        let weeks = format!("[{}, {}, {}]", first, first + 7, first + 14);
        format!("easy = {{ weeks = {weeks}, load = \"-{percent} %\", sets = -1 }}\n")
    } else {
        String::new()
    };
    let plan = format!(
        "[block]\nname = \"Season\"\nstarts = {STARTS}\nweeks = 24\n{easy}\n[kit]\n{kit}\n\n\
         [movement.lift]\nname = \"Lift\"\npattern = \"push\"\nlifted = \"{lifted}\"\n\n\
         [[day]]\nname = \"Evening\"\non = {written}\n\n[[day.piece]]\nkind = \"strength\"\n\
         name = \"Lift\"\nmovement = \"lift\"\nreps = {reps}\nopen = {open}\nload = {load}\n"
    );
    let block = read_plan(plan.as_bytes()).unwrap_or_else(|wrong| panic!("{wrong:?}\n{plan}"));
    let unit = if group == Group::Pounds { MassUnit::Lb } else { MassUnit::Kg };
    let prepared = Prepared::new(block.clone());
    let movement = prepared.movement("lift").unwrap();
    let builds =
        prepared.builds_for(strength(&block), &movement.exercise(None), unit, None).clone();
    let name = format!("{group:?} {which}");
    Member { name, group, plan, block, builds, unit, on, body_kg, athlete }
}

/// The load's rule as it is written in a plan.
fn rule(group: Group, athlete: &Athlete, open: bool, reps: &str) -> String {
    let step = |step: &str, earned: &str| {
        let earned = if open { format!(", earned_step = \"{earned}\"") } else { String::new() };
        format!("{{ rule = \"step\", step = \"{step}\"{earned} }}")
    };
    match group {
        Group::Novice | Group::Trained | Group::Strong | Group::Holes => step("2.5 kg", "5 kg"),
        Group::Pounds => step("5 lb", "10 lb"),
        Group::Bells => "{ rule = \"step\", step = \"2 kg\" }".to_owned(),
        Group::Added => "{ rule = \"step\", step = \"2.5 kg\" }".to_owned(),
        Group::Assisted => "{ rule = \"step\", step = \"5 kg\" }".to_owned(),
        Group::Percent => "{ rule = \"percent\", percents = 70, step = \"2.5 kg\" }".to_owned(),
        Group::Fixed => {
            // As many reps as the longest set asks for, and three more.
            let most = reps.trim_matches(['[', ']']).split(", ").filter_map(|n| n.parse().ok());
            let can = athlete.can(most.fold(0.0, f64::max) + 3.0);
            format!("{{ rule = \"fixed\", loads = \"{} kg\" }}", (can / 2.5).floor() * 2.5)
        }
    }
}

fn strength(block: &Block) -> &Strength {
    let PieceKind::Strength(strength) = &block.days[0].pieces[0].kind else {
        panic!("the piece is one of sets")
    };
    strength
}

impl Member {
    pub(super) fn rule(&self) -> &LoadRule {
        &strength(&self.block).load
    }

    pub(super) fn scheme(&self) -> &Scheme {
        &strength(&self.block).scheme
    }

    /// The one-rep max that was tested before the season, where the plan's loads are a percentage of it.
    pub(super) fn tested(&self) -> Option<Mass> {
        let halves = (self.athlete.max * 0.95 / 2.5).floor() as i64;
        let tested = Mass::thousandths(halves * 2_500, MassUnit::Kg);
        (self.group == Group::Percent).then_some(tested)
    }

    /// Kilograms that are lifted with a load, the body where it is lifted too.
    pub(super) fn kg(&self, load: Mass) -> f64 {
        (self.body_kg + load.for_drawing(MassUnit::Kg)).max(0.5)
    }

    /// The load of so many kilograms in all, as the room builds it.
    pub(super) fn load_of(&self, kg: f64) -> Mass {
        let grams = ((kg - self.body_kg) * 1000.0).floor() as i64;
        let wanted = Mass::thousandths(grams, MassUnit::Kg);
        let build = self.builds.at_or_below(wanted).or(self.builds.lightest());
        build.map_or(Mass::ZERO, |build| build.mass)
    }
}

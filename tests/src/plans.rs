//! Plans and kits that checks use.

use chrono::{Datelike, Days, Utc};

/// The demo's plan.
pub const DEMO_PLAN: &str = include_str!("../../desk/demo/plan.toml");

/// One day with one piece of each kind, every day of the week for two weeks.
pub const SMALL_PLAN: &str = include_str!("../../bindings/fixtures/small-plan.toml");

/// Every kind of load, track, bar and easy week that a plan can have, on a Tuesday.
pub const EVERY_KIND: &str = include_str!("../../bindings/fixtures/every-kind.toml");

/// More pieces for the small plan's day: the longest screen there is a reason for.
pub const LONGER_DAY: &str = include_str!("../../bindings/fixtures/longer-day.toml");

/// The days on which the small plan's one day is trained.
pub const EVERY_DAY: &str =
    r#"["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]"#;

/// A kit on its own, with an odd bar.
pub const CELLAR_KIT: &str = r#"[kit]
name = "Cellar"
bar = [
  { name = "long bar", mass = "20 kg", count = 2 },
  { name = "axle", mass = "15 kg", collars = "5 kg" },
  { name = "pound bar", mass = "45 lb" },
]
plate = [
  { mass = "20 kg", count = 4 },
  { mass = "10 kg", count = 4 },
  { mass = "5 kg", count = 4 },
  { mass = "2.5 kg", count = 4 },
  { mass = "1.25 kg", count = 2 },
  { mass = "45 lb", count = 4 },
]
"#;

/// A plan with one thing written otherwise.
///
/// # Panics
/// When the plan does not say that: a check of an unchanged plan would check something else.
pub fn changed(plan: &str, from: &str, to: &str) -> String {
    assert!(plan.contains(from), "the plan does not say {from}");
    plan.replace(from, to)
}

/// The small plan moved to the week that is now, so that today is a planned day.
pub fn this_week() -> String {
    let today = Utc::now().date_naive();
    let monday = today - Days::new(u64::from(today.weekday().num_days_from_monday()));
    changed(SMALL_PLAN, "2026-11-02", &monday.to_string())
}

//! Plans that checks use.

/// The demo's plan.
pub const DEMO_PLAN: &str = include_str!("../../desk/demo/plan.toml");

/// One day with one piece of each kind, every day of the week for two weeks.
pub const SMALL_PLAN: &str = include_str!("../../bindings/fixtures/small-plan.toml");

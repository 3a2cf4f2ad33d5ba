//! Plans that checks use.

/// The demo's plan.
pub const DEMO_PLAN: &str = include_str!("../../desk/demo/plan.toml");

/// One day with one piece of each kind, every day of the week for two weeks.
pub const SMALL_PLAN: &str = r#"
[block]
name = "Small block"
starts = 2026-11-02
weeks = 2

[kit]
name = "Boathouse cellar"
bar = [
  { name = "long bar", mass = "20 kg" },
  { name = "pound bar", mass = "45 lb" },
]
plate = [
  { mass = "20 kg", count = 4 },
  { mass = "10 kg", count = 4 },
  { mass = "5 kg", count = 4 },
  { mass = "2.5 kg", count = 4 },
  { mass = "1.25 kg", count = 4 },
  { mass = "45 lb", count = 4 },
  { mass = "25 lb", count = 2 },
  { mass = "10 lb", count = 4 },
  { mass = "5 lb", count = 4 },
  { mass = "2.5 lb", count = 4 },
]
bell = [{ mass = "16 kg", count = 2 }]

[movement.back-squat]
name = "Back squat"
pattern = "squat"
lifted = "bar"
option.box-squat = { name = "Squat to a box", because = "low-back" }

[movement.bell-swing]
name = "Bell swing"
pattern = "hinge"
lifted = "bell"

[movement.press-up]
name = "Press-up"
pattern = "push"
lifted = "body"

[stretch.calf-wall]
name = "Calf stretch at the wall"
region = "calves"

[[day]]
name = "Any evening"
on = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

  [[day.piece]]
  kind = "strength"
  name = "Squat"
  movement = "back-squat"
  reps = [8, 6, 5]
  open = true
  rest = "2 min"
  load = { rule = "step", step = ["2.5 kg", "5 lb"], earned_step = ["5 kg", "10 lb"], earned_by = 3 }

  [[day.piece]]
  kind = "interval"
  name = "Corners"
  window = "1 min"
  rounds = 2
  station = [
    { movement = "bell-swing", reps = 15, load = "16 kg" },
    { movement = "press-up", reps = 10 },
  ]

  [[day.piece]]
  kind = "hold"
  name = "Calves"
  stretch = "calf-wall"
  hold = "2 min"
  measure = "knee-to-wall"

  [[day.piece]]
  kind = "note"
  name = "After"
  text = "Sweep the floor."
"#;

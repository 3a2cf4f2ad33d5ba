//! What unit tests of several rooms stand on: a bar, its plates, and a window that was done.

use crate::id::{RecordId, random};
use crate::journal::{Lift, WindowDone};
use crate::mass::{Mass, MassUnit};
use crate::plan::{Bar, Builds, Exercise, Kit, PlateStack, Scheme};

/// Kilograms as text, with or without their unit.
pub(crate) fn kg(text: &str) -> Mass {
    Mass::parse(text, Some(MassUnit::Kg)).unwrap()
}

/// A kit with one bar of 20 kg, its collars, and plates with their count.
pub(crate) fn kit(collars: &str, plates: &[(Mass, u32)]) -> Kit {
    let unit = |mass: Mass| {
        if mass.is_exact_in(MassUnit::Kg) { MassUnit::Kg } else { MassUnit::Lb }
    };
    let plates = plates.iter().map(|(mass, count)| PlateStack {
        mass: *mass,
        unit: unit(*mass),
        count: *count,
    });
    let bar = Bar {
        name: "long bar".into(),
        mass: Mass::kg(20),
        unit: MassUnit::Kg,
        collars: kg(collars),
        count: 1,
    };
    Kit { bars: vec![bar], plates: plates.collect(), ..Kit::default() }
}

/// What a kit's first bar can be built to.
pub(crate) fn builds(kit: &Kit) -> Builds {
    Builds::bar(kit, &kit.bars[0])
}

/// A window of fifteen swings, done with so many reps and so much to spare.
pub(crate) fn window_done(reps: u32, spare_ms: Option<i64>) -> WindowDone {
    WindowDone {
        session: RecordId(random([1; 16])),
        piece: "Corners".into(),
        window: 1,
        exercise: Exercise::of("swing"),
        asked: 15,
        reps,
        load: None,
        spare_ms,
        margin_ms: 10_000,
        at: None,
        on: None,
    }
}

/// The first set of a squat, as an older app would have written it.
pub(crate) fn lift(scheme: Scheme, load: Mass, reps: u32) -> Lift {
    Lift {
        session: RecordId(random([1; 16])),
        piece: "Squat".into(),
        track: None,
        exercise: Exercise::of("squat"),
        scheme,
        easy: false,
        proposed: Vec::new(),
        max: None,
        set: 1,
        planned: None,
        load: Some(load),
        reps,
        reserve: None,
        counted: None,
        doubt: false,
        bar: None,
        side: None,
        at: None,
        on: None,
    }
}

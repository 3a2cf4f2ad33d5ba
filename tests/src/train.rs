//! Whole stretches of training.

use holdfast_core::session::{PieceKindView, Tap};
use holdfast_core::{Mass, Millis};

use crate::Device;
use crate::taps::{begin, begin_day, finish, kg, set, set_of};

/// A session of squats: loads in kilograms and reps, rated 7 of an hour.
///
/// # Panics
/// When a tap is refused.
pub fn squats(device: &Device, date: &str, sets: &[(i64, u32)]) {
    device.go_to(date);
    device.tap(begin()).unwrap();
    for (kg, reps) in sets {
        device.tap(set(Some(Mass::kg(*kg)), Some(*reps))).unwrap();
    }
    device.tap(finish(7, 60)).unwrap();
}

/// A session begun with squats of 50, 60 and 70 kg, as planned.
///
/// # Panics
/// When a tap is refused.
pub fn three_squats(device: &Device, date: &str) {
    device.go_to(date);
    device.tap(begin()).unwrap();
    for load in [50, 60] {
        device.tap(kg(load)).unwrap();
    }
    // The last set is open: its reps are counted.
    device.tap(set(Some(Mass::kg(70)), Some(5))).unwrap();
}

/// One whole session: every set with 60 kg, every window and every hold of the day.
///
/// # Panics
/// When a tap is refused.
pub fn whole_day(device: &Device, day: &str) {
    let screen = device.tap(begin_day(day)).unwrap();
    for piece in &screen.pieces {
        let of = piece.name.as_str();
        let tap = |tap: Tap| drop(device.tap(tap).unwrap());
        match &piece.kind {
            PieceKindView::Strength { view } => {
                for set in &view.sets {
                    tap(set_of(of, None, Some(Mass::kg(60)), Some(set.asked)));
                }
            }
            PieceKindView::Interval { view } => {
                for _ in &view.windows {
                    let spare = Some(Millis(12_000));
                    tap(Tap::LogWindow { piece: of.into(), window: None, reps: None, spare });
                }
            }
            PieceKindView::Hold { .. } => {
                let held = vec![Millis(120_000); 2];
                tap(Tap::LogHold { piece: of.into(), held, said: None });
            }
            PieceKindView::Note { .. } => {}
        }
    }
    device.tap(finish(7, 50)).unwrap();
}

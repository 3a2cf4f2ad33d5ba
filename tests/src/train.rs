//! Whole stretches of training.

use holdfast_core::Mass;
use holdfast_core::companion::{PieceView, Tap};

use crate::Device;
use crate::taps::{begin, begin_day, finish, kg, set, set_of};
use crate::views::name;

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
    for load in [50, 60, 70] {
        device.tap(kg(load)).unwrap();
    }
}

/// One whole session: every set with 60 kg, every window and every hold of the day.
///
/// # Panics
/// When a tap is refused.
pub fn whole_day(device: &Device, day: &str) {
    let screen = device.tap(begin_day(day)).unwrap();
    for piece in &screen.pieces {
        let of = name(piece);
        let tap = |tap: Tap| drop(device.tap(tap).unwrap());
        match piece {
            PieceView::Strength { view } => {
                for _ in &view.sets {
                    tap(set_of(of, None, Some(Mass::kg(60)), None));
                }
            }
            PieceView::Interval { view } => {
                for _ in &view.windows {
                    let spare_ms = Some(12_000);
                    tap(Tap::LogWindow { piece: of.into(), window: None, reps: None, spare_ms });
                }
            }
            PieceView::Hold { .. } => {
                let held_ms = vec![120_000, 120_000];
                tap(Tap::LogHold { piece: of.into(), held_ms, said: None });
            }
            PieceView::Note { .. } => {}
        }
    }
    device.tap(finish(7, 50)).unwrap();
}

//! When cues are due by the boot clock that a shell has, and not by the one that entries have.

use super::{ClockView, CueView, PieceKindView, SessionScreen};

impl SessionScreen {
    /// The screen for a shell whose boot clock reads `boot_ms` now.
    pub(crate) fn by_boot_clock(mut self, boot_ms: i64) -> SessionScreen {
        let clocks = self.pieces.iter_mut().map(|piece| match &mut piece.kind {
            PieceKindView::Interval { view } => view.clock.as_mut(),
            PieceKindView::Hold { view } => view.clock.as_mut(),
            PieceKindView::Strength { .. } | PieceKindView::Note { .. } => None,
        });
        let clocks = clocks.chain([self.here.clock.as_mut()]).flatten();
        let in_clocks = clocks.flat_map(|clock: &mut ClockView| clock.cues.iter_mut());
        let resting = self.rest.iter_mut().filter_map(|rest| rest.cue.as_mut());
        for cue in in_clocks.chain(resting).chain(&mut self.cues) {
            let CueView { due_in, due_boot_ms, .. } = cue;
            *due_boot_ms = boot_ms.saturating_add(due_in.0);
        }
        self
    }
}

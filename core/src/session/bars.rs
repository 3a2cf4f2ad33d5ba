//! The bars of the room that a piece can be lifted with.

use super::plates::bar_text;
use super::screen::BarView;
use super::sheet::Sheet;
use crate::journal::Lift;
use crate::load::Prepared;
use crate::mass::MassUnit;
use crate::plan::{Bar, Builds};

/// What carried the load of a set. An app that did not write the bar knew no other than the plan's.
pub(super) fn builds_of<'b>(block: &'b Prepared, lift: &Lift, unit: MassUnit) -> &'b Builds {
    let planned = || match block.strength(&lift.piece) {
        Some(strength) => block.builds_for(strength, &lift.exercise, unit, None),
        None => block.builds(&lift.exercise, unit),
    };
    lift.bar.as_deref().and_then(|bar| block.on_bar(bar)).unwrap_or_else(planned)
}

impl Sheet<'_> {
    /// The bars to choose from; none where there is one alone, and for what needs none.
    pub(super) fn bars(&self, builds: &Builds) -> Vec<BarView> {
        let bars = &self.block.kit.bars;
        if !builds.has_plates() || bars.len() < 2 {
            return Vec::new();
        }
        let view = |bar: &Bar| BarView {
            name: bar.name.clone(),
            text: bar_text(bar),
            taken: bar.name == builds.bar,
        };
        bars.iter().map(view).collect()
    }
}

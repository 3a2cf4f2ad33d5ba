//! Plates for loads.

use holdfast_core::session::PlatesScreen;
use owo_colors::OwoColorize;

use super::{indented, table};
use crate::say;

/// One load in a line, a ramp as a table with what to do for each load.
pub(crate) fn plates(screen: &PlatesScreen) -> String {
    let heading = format!("{}\n", screen.heading.bold());
    if let [only] = screen.steps.as_slice() {
        return format!("{heading}  {}\n", say::plates::only_load(&only.load, &only.build));
    }
    let warms_up = screen.steps.iter().any(|step| step.warm_up_reps.is_some());
    let mut header = vec![
        say::plates::column_load(),
        say::plates::column_build(),
        say::plates::column_change(),
        say::plates::column_moved(),
    ];
    if warms_up {
        header.insert(1, say::plates::column_warm_up());
    }
    let mut lines = table(&header);
    for step in &screen.steps {
        let mut row = vec![
            step.load.clone(),
            step.build.clone(),
            step.change.clone(),
            step.handled.to_string(),
        ];
        if warms_up {
            row.insert(1, step.warm_up_reps.map_or(String::new(), say::plates::reps));
        }
        lines.add_row(row);
    }
    format!("{heading}{}{}\n", indented(&lines, 2), screen.handling)
}

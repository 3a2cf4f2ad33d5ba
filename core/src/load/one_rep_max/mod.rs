//! One-rep max from a set taken to failure: the published equations and reps tables.
//!
//! Estimates are floating kilograms, for showing and modelling and never for building a bar. How
//! far off they are: about 3 kg either way for a trained bench press of up to ten reps, about a
//! tenth elsewhere (Lacio et al., Motricidade 2010; Hutchins and Gearhart 2010). The deadlift is
//! the lift they serve worst: they say too little (LeSuer et al., J Strength Cond Res
//! 1997;11:211-213, from memory).

mod equation;
mod estimate;
mod table;

pub use equation::{Equation, FewestMost, Lift};
pub use estimate::{Estimate, EstimateError, HEAVIEST, MANY_REPS};
pub use table::RepsTable;

//! Whose home it is: what every file in it is read and written with.

use std::sync::Arc;

use super::Identity;
use crate::trust::Kept;

/// Whose home it is.
pub(super) struct Owner<'a> {
    pub(super) identity: &'a Identity,
    pub(super) kept: &'a Arc<Kept>,
}

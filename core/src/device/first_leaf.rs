//! A bug that tests plant: a device without a crew joins that of the first leaf it can open.

use super::Device;
use crate::error::Result;
use crate::exchange::sealed::{SealedLeaf, SealedName};
use crate::exchange::{ExchangeDid, ExchangeReport, ExchangeStep};
use crate::planted::{Planted, planted};

impl Device {
    /// One step of an exchange that nobody should have. None where the bug is not planted, or there is a crew.
    pub(super) fn join_by_leaf(&mut self, did: &ExchangeDid) -> Result<Option<ExchangeStep>> {
        if self.crew().is_some() || !planted(Planted::FirstLeafJoins) {
            return Ok(None);
        }
        Ok(Some(match did {
            ExchangeDid::Begin => ExchangeStep::ListFiles,
            ExchangeDid::Listed { files } => {
                ExchangeStep::Get { names: files.iter().map(|file| file.name.clone()).collect() }
            }
            ExchangeDid::Got { files, .. } => {
                let mut leaves = files.iter().filter_map(|file| {
                    let name = SealedName::parse(&file.name)?;
                    SealedLeaf::open_any(&name, &file.content, &[&self.kept.keys]).ok()
                });
                if let Some(leaf) = leaves.next() {
                    self.identity.founder = Some(leaf.certificate);
                    self.identity.write(&self.home)?;
                    self.settle_members()?;
                }
                ExchangeStep::Done { report: ExchangeReport::default() }
            }
            ExchangeDid::Put { .. } => ExchangeStep::Done { report: ExchangeReport::default() },
        }))
    }
}

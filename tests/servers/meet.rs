//! A device that exchanges over a line, as the program does it, and what ends that.

use carry::{Carried, Line};
use holdfast_core::exchange::{CarriedFile, ExchangeDid, ExchangeReport, ExchangeStep};
use holdfast_tests::Device;

/// A whole exchange, which the first fault ends.
pub(crate) fn exchange(device: &Device, line: &Line) -> Result<ExchangeReport, Carried> {
    exchange_seeing(device, line, |_| ())
}

/// The same; `sees` is shown each file once the carrier has said that it is written.
pub(crate) fn exchange_seeing(
    device: &Device,
    line: &Line,
    mut sees: impl FnMut(&CarriedFile),
) -> Result<ExchangeReport, Carried> {
    let mut did = ExchangeDid::Begin;
    loop {
        did = match device.step(did)? {
            ExchangeStep::ListFiles => {
                let (place, now) = (line.place(), device.now());
                let parts = device.holdfast.to_look_into(place, line.parts()?, now)?;
                ExchangeDid::Listed { files: line.leaves_of(parts)? }
            }
            ExchangeStep::Get { names } => {
                let mut files = Vec::new();
                for name in names {
                    let content = line.leaf(&name)?;
                    files.extend(content.map(|content| CarriedFile { name, content }));
                }
                ExchangeDid::Got { files, unread: Vec::new() }
            }
            ExchangeStep::Put { files } => {
                let mut written = 0;
                for file in files {
                    written += u32::from(line.bring(&file.name, file.content.clone())?);
                    sees(&file);
                }
                ExchangeDid::Put { written, unwritten: Vec::new() }
            }
            ExchangeStep::Done { report } => return Ok(report),
        };
    }
}

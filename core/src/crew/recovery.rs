//! The recovery code: shown until its owner has shown that it is on paper, then forgotten here.

use serde::Serialize;

use crate::device::Device;
use crate::error::{Error, Field, Result};
use crate::exchange::sha256;
use crate::say::crew as say;
use crate::trust::Recovery;

/// Groups of a code.
const GROUPS: usize = 8;

/// What somebody does with their recovery code.
#[derive(Clone, PartialEq, Eq)]
#[cfg_attr(feature = "ffi", derive(uniffi::Enum))]
pub enum RecoveryDid {
    /// Looks whether it is still on the device.
    Look,
    /// Has it shown.
    Show,
    /// Types back the two groups that were asked for.
    Confirm {
        /// Both, in their order.
        groups: String,
    },
    /// Says that the home was moved, and is the same device as before.
    Moved,
    /// Says that the home was copied: this copy becomes a device of its own.
    Copied {
        /// The code from paper; it is not needed while it is still on the device.
        code: Option<String>,
    },
}

/// What a shell shows of a recovery code.
#[derive(Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "ffi", derive(uniffi::Record))]
pub struct RecoveryScreen {
    /// True while the code is still on the device.
    pub kept: bool,
    /// What to do.
    pub ask: String,
    /// The code, where it was asked for and is here.
    pub code: Option<String>,
    /// The two groups to type back, counted from 1; none once that was done.
    pub groups: Vec<u32>,
    /// True when the home lies elsewhere than before, and nobody has said whether it was moved or copied.
    pub elsewhere: bool,
}

impl std::fmt::Debug for RecoveryDid {
    // What was typed never reaches a log.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.write_str(match self {
            RecoveryDid::Look => "Look",
            RecoveryDid::Show => "Show",
            RecoveryDid::Confirm { .. } => "Confirm",
            RecoveryDid::Moved => "Moved",
            RecoveryDid::Copied { .. } => "Copied",
        })
    }
}

impl std::fmt::Debug for RecoveryScreen {
    // The code never reaches a log.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let RecoveryScreen { kept, groups, .. } = self;
        write!(out, "{{ kept: {kept}, groups: {groups:?} }}")
    }
}

/// Does what somebody did with their recovery code.
pub(crate) fn recovery(device: &mut Device, did: RecoveryDid) -> Result<RecoveryScreen> {
    let asked = asked(device);
    let mut shown = None;
    match did {
        RecoveryDid::Look => {}
        RecoveryDid::Show => {
            shown = device.kept.recovery.as_ref().map(|recovery| recovery.code().to_string());
        }
        RecoveryDid::Confirm { groups } => {
            if let Some(recovery) = &device.kept.recovery {
                let typed: Vec<&str> =
                    groups.split([' ', '-', ',']).filter(|group| !group.is_empty()).collect();
                let [first, second] = typed[..] else {
                    return Err(Error::invalid(Field::Recovery, say::two_groups()));
                };
                if !recovery.confirms([(asked[0], first), (asked[1], second)]) {
                    return Err(Error::invalid(
                        Field::Recovery,
                        say::groups_differ(asked[0], asked[1]),
                    ));
                }
                device.forget_recovery()?;
            }
        }
        RecoveryDid::Moved => device.moved(),
        RecoveryDid::Copied { code } => {
            let recovery = typed_or_kept(device, code.as_deref())?;
            device.copied(&recovery)?;
        }
    }
    let kept = device.kept.recovery.is_some();
    let elsewhere = device.elsewhere;
    let ask = match (elsewhere, kept, &shown) {
        (true, ..) => say::moved_or_copied().to_owned(),
        (false, true, Some(_)) => say::write_it_down(asked[0], asked[1]),
        (false, true, None) => say::code_is_kept().to_owned(),
        (false, false, _) => say::code_is_on_paper().to_owned(),
    };
    let groups = if kept { asked.map(|group| group as u32).to_vec() } else { Vec::new() };
    Ok(RecoveryScreen { kept, ask, code: shown, groups, elsewhere })
}

/// The two groups to type back: others on another device, the same whenever they are asked for.
fn asked(device: &Device) -> [usize; 2] {
    let drawn = sha256(device.identity.device.0.as_bytes());
    let number = |at: usize| usize::from_str_radix(&drawn[at..at + 4], 16).unwrap_or_default();
    let first = number(0) % GROUPS;
    let second = (first + 1 + number(4) % (GROUPS - 1)) % GROUPS;
    [first.min(second) + 1, first.max(second) + 1]
}

/// The recovery secret: as it was typed, otherwise as it lies here.
pub(super) fn typed_or_kept(device: &Device, code: Option<&str>) -> Result<Recovery> {
    let recovery = match code {
        Some(code) => Recovery::read(code)
            .map_err(|fault| Error::invalid(Field::Recovery, fault.to_string()))?,
        None => match &device.kept.recovery {
            Some(recovery) => recovery.clone(),
            None => return Err(Error::invalid(Field::Recovery, say::type_the_code())),
        },
    };
    if recovery.keys().public() != device.identity.certificate.person_keys() {
        return Err(Error::invalid(Field::Recovery, say::code_of_somebody_else()));
    }
    Ok(recovery)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_printed_has_no_code_in_it() {
        let code = "ABCD-EFGH";
        let confirm = RecoveryDid::Confirm { groups: code.into() };
        let copied = RecoveryDid::Copied { code: Some(code.into()) };
        let screen = RecoveryScreen {
            kept: true,
            ask: "Write it down.".into(),
            code: Some(code.into()),
            groups: vec![2, 5],
            elsewhere: false,
        };
        for text in [format!("{confirm:?} {copied:#?}"), format!("{screen:?}")] {
            assert!(!text.contains("ABCD") && !text.contains("EFGH"), "{text}");
            assert!(text.contains("Confirm") || text.contains("kept: true"), "{text}");
        }
    }
}

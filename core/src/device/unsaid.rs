//! What a shell hands over with bytes of chance in it, as it is printed: without them, for keys and nonces are made of
//! them, and what is printed may reach a log.

use std::fmt::{Debug, Formatter, Result};

use super::Start;
use super::pairing::PairDid;

impl Debug for Start {
    fn fmt(&self, out: &mut Formatter<'_>) -> Result {
        let Start { role, name, unit, chance: _ } = self;
        let mut start = out.debug_struct("Start");
        start.field("role", role).field("name", name).field("unit", unit).finish_non_exhaustive()
    }
}

impl Debug for PairDid {
    fn fmt(&self, out: &mut Formatter<'_>) -> Result {
        match self {
            PairDid::Look => out.write_str("Look"),
            PairDid::Invite { chance: _ } => out.write_str("Invite"),
            PairDid::Scan { text, chance: _ } => {
                out.debug_struct("Scan").field("text", text).finish_non_exhaustive()
            }
            PairDid::Fetched { files } => {
                out.debug_struct("Fetched").field("files", files).finish()
            }
            PairDid::Pick { line, label } => {
                out.debug_struct("Pick").field("line", line).field("label", label).finish()
            }
            PairDid::Match { matches, share_earlier } => {
                let mut compared = out.debug_struct("Match");
                compared.field("matches", matches).field("share_earlier", share_earlier).finish()
            }
            PairDid::ShareEarlier => out.write_str("ShareEarlier"),
            PairDid::Stop => out.write_str("Stop"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::Keystore;
    use super::*;
    use crate::journal::Role;
    use crate::mass::MassUnit;
    use crate::trust::tests::{never_printed, shows};

    never_printed!(Keystore);

    #[test]
    fn what_is_printed_has_no_chance_in_it() {
        let chance: Vec<u8> = (150..230).collect();
        let start = Start {
            role: Role::Coach,
            name: "Maren".into(),
            unit: MassUnit::Kg,
            chance: chance.clone(),
        };
        let invite = PairDid::Invite { chance: chance.clone() };
        let scan = PairDid::Scan { text: "HF1:".into(), chance: chance.clone() };
        for (text, says) in [
            (format!("{start:?} {start:#?}"), "Maren"),
            (format!("{invite:?} {invite:#?}"), "Invite"),
            (format!("{scan:?} {scan:#?}"), "HF1:"),
        ] {
            assert!(text.contains(says) && !shows(&text, &chance), "{text}");
        }
    }
}

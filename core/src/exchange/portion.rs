//! What is fetched first, and how much is fetched or written in one step.

use std::collections::BTreeMap;

use super::sealed::{SealedName, Tag};
use crate::id::DeviceId;

/// Files fetched or written in one step, where they are small.
pub(super) const FILES_A_STEP: usize = 128;
/// Files of one lane that are fetched one after the other, before it is the next lane's turn.
const FILES_A_TURN: usize = 16;
/// Bytes fetched or written in one step, until a file goes over that: enough that the flushes of a step are shared by
/// many, few enough that memory stays small and a tap between two steps waits a fraction of a second.
pub(super) const BYTES_A_STEP: u64 = 512 * 1024;

/// Takes as many from the end as make one step.
pub(super) fn some_of<T>(waiting: &mut Vec<T>, bytes_of: impl Fn(&T) -> u64) -> Vec<T> {
    let (mut some, mut bytes) = (Vec::new(), 0_u64);
    while some.len() < FILES_A_STEP && bytes < BYTES_A_STEP {
        let Some(one) = waiting.pop() else { break };
        bytes = bytes.saturating_add(bytes_of(&one));
        some.push(one);
    }
    some
}

/// Files to fetch in their turn: what was never tried first, and of each lane a few at a time, so that somebody who fills a
/// lane holds up nobody else's.
pub(super) fn in_turn(mut waiting: Vec<(i64, SealedName, u64)>) -> Vec<(SealedName, u64)> {
    waiting.sort();
    let mut places: BTreeMap<(i64, DeviceId, Tag), usize> = BTreeMap::new();
    let mut turns: Vec<(i64, usize, SealedName, u64)> = Vec::new();
    for (tries, name, bytes) in waiting {
        let place = places.entry((tries, name.device, name.tag)).or_default();
        turns.push((tries, *place / FILES_A_TURN, name, bytes));
        *place += 1;
    }
    turns.sort();
    turns.into_iter().map(|(.., name, bytes)| (name, bytes)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(device: u128, sequence: u64) -> SealedName {
        let hash = format!("{sequence:016x}").parse().unwrap();
        SealedName {
            device: DeviceId(uuid::Uuid::from_u128(device)),
            tag: "0123abcd".parse().unwrap(),
            sequence,
            hash,
        }
    }

    #[test]
    fn a_step_ends_at_128_files_or_where_it_passes_512_kib() {
        let step = |sizes: &[u64]| {
            let mut waiting = sizes.to_vec();
            let some = some_of(&mut waiting, |bytes| *bytes);
            assert_eq!(some.len() + waiting.len(), sizes.len());
            some
        };
        assert_eq!(step(&[]), [0; 0]);
        assert_eq!(step(&[2_048; 127]).len(), 127);
        assert_eq!(step(&[2_048; 129]).len(), 128);
        // 2^16 eight times are 512 KiB: the eighth file reaches it, and is the last.
        assert_eq!(step(&[65_536; 20]).len(), 8);
        // One byte less, and the next still comes, however large it is.
        let sizes = [1, 4_194_304, 65_535, 65_536, 65_536, 65_536, 65_536, 65_536, 65_536, 65_536];
        assert_eq!(step(&sizes).len(), 9);
        assert_eq!(step(&[1, 4_194_304]), [4_194_304], "from the end");
        assert_eq!(step(&[u64::MAX, u64::MAX, 1]), [1, u64::MAX]);
    }

    /// However much somebody puts into a lane: the n-th file of each other lane is fetched after at most as many of theirs.
    #[test]
    fn nobody_who_fills_a_lane_holds_up_another() {
        let (full, other) = (1, 2);
        let waiting: Vec<_> = (1..=5_000)
            .map(|sequence| (0, file(full, sequence), 2_048))
            .chain((1..=40).map(|sequence| (0, file(other, sequence), 2_048)))
            // What was torn before comes last, of whomever.
            .chain([(2, file(3, 1), 2_048), (1, file(4, 1), 2_048)])
            .collect();
        let order: Vec<SealedName> =
            in_turn(waiting.clone()).into_iter().map(|(name, _)| name).collect();
        assert_eq!(order.len(), waiting.len());
        for sequence in 1..=40 {
            let place = order.iter().position(|name| *name == file(other, sequence)).unwrap();
            assert!(place < 2 * (sequence as usize + FILES_A_TURN), "{sequence} at {place}");
        }
        assert_eq!(order[order.len() - 2..], [file(4, 1), file(3, 1)]);
        // Within a lane they come in their order.
        let of_full: Vec<u64> = order
            .iter()
            .filter(|name| name.device == file(full, 1).device)
            .map(|name| name.sequence)
            .collect();
        assert!(of_full.is_sorted());
    }
}

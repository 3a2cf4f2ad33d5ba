//! How much is fetched or written in one step.

/// Files fetched or written in one step, where they are small.
pub(super) const FILES_A_STEP: usize = 128;
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

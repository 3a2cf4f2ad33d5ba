//! How much is fetched or written in one step.

/// Files fetched or written in one step: enough to be quick, few enough to keep memory small.
pub(super) const FILES_A_STEP: usize = 32;
/// Bytes fetched or written in one step, unless one file alone has more.
pub(super) const BYTES_A_STEP: u64 = 8 * 1024 * 1024;

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

//! A coach's answer that something holds: it stands, and is said beside the load.

use super::{History, NextLoads, Reason, next_loads};
use crate::plan::{Builds, Easy, LoadRule, Scheme};

/// [`next_loads`], and beside each load that pain or an easy week keeps off the coach's answer, that answer.
pub fn next_loads_and_answer(
    rule: &LoadRule,
    scheme: &Scheme,
    builds: &Builds,
    history: &History,
    easy: Option<&Easy>,
) -> NextLoads {
    let mut next = next_loads(rule, scheme, builds, history, easy);
    let decides = next.sets.iter().all(|set| matches!(set.reason, Reason::Coach { .. }));
    if decides || history.ruling.is_none() {
        return next;
    }
    // What would stand without them.
    let free = History { flags: Vec::new(), ..history.clone() };
    let free = next_loads(rule, scheme, builds, &free, None);
    for (set, free) in next.sets.iter_mut().zip(free.sets) {
        let Reason::Coach { decision, words, .. } = free.reason else { continue };
        if set.load != free.load {
            set.others.push(Reason::Answered { decision, load: free.load, words });
        }
    }
    next
}

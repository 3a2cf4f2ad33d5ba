//! What must hold of homes that are shut: threads, chains, what was sealed again, and what ended devices had said.

use std::collections::{BTreeMap, BTreeSet};

use holdfast_core::exchange::sealed::SealedName;

use super::check::{Held, Line};
use super::{ANA, BEN, Done, MAREN, NAMES, World};

impl World {
    fn id(&self, at: usize) -> String {
        self.seats[at].id.0.simple().to_string()
    }

    fn ids_of(&self, who: usize) -> BTreeSet<String> {
        let theirs = (0..self.seats.len()).filter(|at| self.seats[*at].who == who);
        theirs.map(|at| self.id(at)).collect()
    }

    fn thread(&self, of: usize) -> String {
        self.writers[of].person().0.simple().to_string()
    }

    /// What an honest device had of one that it stopped or removed still counts on every device that is for, whatever
    /// others named that did the same.
    pub(super) fn what_ended_still_counts(&self, held: &[Held]) -> Done {
        for ended in &self.ends {
            // What a laptop said that was stopped later may not have been heard, and who is taken out names nothing.
            let by = &self.seats[ended.by];
            if by.stolen || by.ended || !self.in_crew[by.who] {
                continue;
            }
            let members = if ended.who == MAREN { Vec::new() } else { self.honest(ended.who) };
            for reader in members.into_iter().chain(self.honest(MAREN)) {
                let lacks = ended.lines.iter().find(|line| !held[reader].lines.contains(*line));
                if let Some(lacks) = lacks {
                    return Err(format!(
                        "{} ended a device of {} with {lacks:?}, which counts no more on {reader}",
                        ended.by, NAMES[ended.who]
                    ));
                }
            }
        }
        Ok(())
    }

    /// A member's devices and the coach's have the same of the member's thread, and a member's nothing else.
    pub(super) fn threads_are_the_same_on_both_sides(&self, held: &[Held]) -> Done {
        let coachs = self.ids_of(MAREN);
        for who in [ANA, BEN] {
            let (thread, theirs) = (self.thread(who), self.ids_of(who));
            let of_thread = |at: usize| -> BTreeSet<&Line> {
                let own = held[at].lines.iter().filter(|line| theirs.contains(&line.0));
                let heard = held[at].heard.iter();
                let heard = heard.filter(|(line, of)| *of == thread && coachs.contains(&line.0));
                let all = own.chain(heard.map(|(line, _)| line));
                all.filter(|line| !self.enemys.contains(&line.1)).collect()
            };
            let readers: Vec<usize> = match self.in_crew[who] {
                true => self.honest(who).into_iter().chain(self.honest(MAREN)).collect(),
                false => Vec::new(),
            };
            for pair in readers.windows(2) {
                let (one, other) = (of_thread(pair[0]), of_thread(pair[1]));
                if let Some(line) = one.symmetric_difference(&other).next() {
                    let (has, name) = (one.contains(*line), NAMES[who]);
                    let [one, other] = [pair[0], pair[1]];
                    return Err(format!(
                        "of {name}'s thread only one of {one} and {other} has {line:?}: {has} the first"
                    ));
                }
            }
            for at in self.honest(who) {
                if let Some(leaf) = held[at].leaves.iter().find(|leaf| leaf.of != thread) {
                    let place = leaf.sequence;
                    return Err(format!("{at} has leaf {place} of a thread that is not its own"));
                }
                let others = held[at].lines.iter().find(|line| {
                    let known = theirs.contains(&line.0) || coachs.contains(&line.0);
                    !known && !self.enemys.contains(&line.1)
                });
                if let Some(line) = others {
                    return Err(format!("{at} has what is not of its thread: {line:?}"));
                }
            }
        }
        Ok(())
    }

    /// Each leaf of a device that nobody ever took follows one of the same lane, and says what it has seen of the two
    /// people of its thread alone.
    pub(super) fn lanes_are_chains_of_one_thread(&self, held: &[Held]) -> Done {
        let Some(coach) = self.honest(MAREN).first().copied() else { return Ok(()) };
        let leaves = &held[coach].leaves;
        let lane: BTreeMap<&[u8], (&str, &str)> = leaves
            .iter()
            .map(|leaf| (&leaf.content[..], (&leaf.device[..], &leaf.of[..])))
            .collect();
        let seats = (0..self.seats.len()).filter(|at| !self.seats[*at].stolen);
        let honest: BTreeSet<String> = seats.map(|at| self.id(at)).collect();
        let injected = self.injected.iter().filter_map(|name| SealedName::parse(name));
        let injected: BTreeSet<String> =
            injected.map(|name| name.device.0.simple().to_string()).collect();
        let threads: BTreeMap<String, usize> =
            [MAREN, ANA, BEN].map(|who| (self.thread(who), who)).into();
        for leaf in leaves.iter().filter(|leaf| honest.contains(&leaf.device)) {
            let Some(who) = threads.get(&leaf.of) else { continue };
            let (device, place) = (&leaf.device, leaf.sequence);
            let follows = lane.get(&leaf.previous[..]);
            let apart = follows.is_some_and(|before| *before != (&device[..], &leaf.of[..]));
            // An enemy with its keys may have shown what it follows to others alone.
            let hidden = injected.contains(device);
            if apart || (place > 1 && follows.is_none() && !hidden) {
                return Err(format!("leaf {place} of {device} follows none of its lane"));
            }
            let both: BTreeSet<String> =
                self.ids_of(MAREN).union(&self.ids_of(*who)).cloned().collect();
            if let Some(other) = leaf.seen.iter().find(|seen| !both.contains(*seen)) {
                let thread = NAMES[*who];
                return Err(format!("leaf {place} of {device} in {thread}'s thread names {other}"));
            }
        }
        Ok(())
    }

    /// A leaf is sealed again by its writer. Others do that for devices that will not, and bring first leaves together.
    pub(super) fn others_seal_again_only_for_those_who_are_gone(&self) -> Done {
        for (name, by) in &self.sealed_by {
            let Some(named) = SealedName::parse(name) else { continue };
            let writer = self.seats.iter().position(|seat| seat.id == named.device);
            let Some(writer) = writer else { continue };
            if writer == *by || self.doubted.contains(&named.device) || named.sequence == 1 {
                continue;
            }
            let Some(content) = self.files.get(name) else { continue };
            if self.opened(name, content).is_some() && !self.injected.contains(name) {
                return Err(format!("{by} seals again what {writer} wrote, who is there: {name}"));
            }
        }
        Ok(())
    }

    /// No device keeps a recovery code that is on paper.
    pub(super) fn codes_are_gone(&self) -> Done {
        for at in [MAREN, ANA, BEN].into_iter().flat_map(|who| self.honest(who)) {
            if self.on_paper.contains(&at) || at >= NAMES.len() {
                self.keeps_no_code(at)?;
            }
        }
        Ok(())
    }
}

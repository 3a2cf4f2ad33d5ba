//! Bugs that would break the trust between people, each in the place where it would really be made. The simulation of a
//! crew must catch every one of them, or it proves nothing where it finds none.
//!
//! They are there with the feature `planted` alone, which no build that anybody uses has: without it [`planted`] is
//! always false, and the compiler leaves the bug out.

use std::borrow::Cow;
#[cfg(feature = "planted")]
use std::sync::atomic::{AtomicUsize, Ordering};

macro_rules! bugs {
    ($($letter:literal $name:ident: $what:literal,)*) => {
        /// A bug.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Planted {
            $(#[doc = $what] $name,)*
        }

        #[cfg(feature = "planted")]
        impl Planted {
            /// Every bug, in order.
            pub const ALL: &'static [Planted] = &[$(Planted::$name),*];

            /// Its letter.
            pub fn letter(self) -> char {
                match self { $(Planted::$name => $letter,)* }
            }

            /// What is wrong with it, in one line.
            pub fn what(self) -> &'static str {
                match self { $(Planted::$name => $what,)* }
            }
        }
    };
}

bugs! {
    'a' LooseSignature: "signatures are checked loosely, points of small order too",
    'b' UncheckedSignature: "a leaf's signature is not checked where its certificate is sound",
    'c' NoLabel: "what is signed has no label",
    'd' AnyCrew: "the crew of a leaf is not compared",
    'e' AnyThread: "whose thread a leaf is in is not compared",
    'f' PersonFromProfile: "whose device it is comes from what it says of itself",
    'g' RoleFromProfile: "who is a coach comes from what they say of themselves",
    'h' ByArrival: "a removal ends what arrives after it",
    'i' ByPlace: "a removal ends what stands at a later place, whatever the chain says",
    'j' ByClock: "a removal ends what is dated later",
    'k' LowestHead: "of several removals the one that leaves least counts",
    'l' StillSealedTo: "a removed device is still sealed to",
    'm' SealedToAll: "what a coach writes is sealed to all members",
    'n' SeenEverywhere: "a leaf names what its writer has seen of all threads",
    'o' OneChain: "a device has one chain for all threads",
    'p' OpenedTwice: "an invitation is opened for a second answer",
    'q' AnyOpening: "the commitment is not compared",
    'r' WordsOfTwo: "the words are of the first two messages alone",
    's' FirstLeafJoins: "a device without a crew joins that of the first leaf it meets",
    't' OwnLeafIgnored: "a leaf of one's own above one's own last one is ignored",
    'u' AllSealAgain: "everybody seals again what a new device lacks",
    'v' SaidToAll: "what is for somebody's own device alone, such as a private note, is cut into leaves",
    'w' CarriedUnverified: "a file that could not be verified is carried on",
    'x' SizeIsEnough: "a file of the right size counts as published, whatever lies there",
    'y' CodeKept: "the recovery code stays on the device after it was typed back",
    'z' FetchedAgain: "the thread of somebody who was forgotten is fetched again",
}

/// True while a test has planted this bug.
#[cfg(not(feature = "planted"))]
pub(crate) const fn planted(_: Planted) -> bool {
    false
}

/// The bug that is planted, counted from 1; 0 where none is.
#[cfg(feature = "planted")]
static NOW: AtomicUsize = AtomicUsize::new(0);

/// True while a test has planted this bug.
#[cfg(feature = "planted")]
pub(crate) fn planted(bug: Planted) -> bool {
    NOW.load(Ordering::Relaxed) == bug as usize + 1
}

/// The bug that is planted; none where there is none.
#[cfg(feature = "planted")]
pub fn planted_now() -> Option<Planted> {
    Planted::ALL.iter().copied().find(|bug| planted(*bug))
}

/// Plants a bug in this process, in place of the one before; none takes it out.
#[cfg(feature = "planted")]
pub fn plant(bug: Option<Planted>) {
    NOW.store(bug.map_or(0, |bug| bug as usize + 1), Ordering::Relaxed);
}

/// A statement; while the bug is planted, with one part of it exchanged.
pub(crate) fn with_planted<'s>(bug: Planted, sql: &'s str, part: &str, by: &str) -> Cow<'s, str> {
    match planted(bug) {
        false => Cow::Borrowed(sql),
        true => Cow::Owned(sql.replace(part, by)),
    }
}

#[cfg(all(feature = "planted", feature = "ffi"))]
compile_error!("a library for phones has no planted bugs");

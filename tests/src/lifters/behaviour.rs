//! How athletes count, rate and progress.

/// What an athlete of the crew does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Behaviour {
    /// Open sets to failure; one in seven stopped a rep early.
    Failure,
    /// Open sets stopped one to three reps short.
    Short,
    /// The same, but never under the target.
    Sticky,
    /// Only presses the key where the target was made.
    Key,
    /// Presses it for six in ten open sets made.
    KeyMix,
    /// Always about 70 % of the one-rep max, 10 reps asked.
    Seventy,
    /// Reps fall slowly with load: the published curve times 0.7.
    Flat,
    /// Reps fall fast with load: the published curve times 1.4.
    Steep,
    /// Nine weeks away once.
    Layoff,
    /// One set mistyped: pounds for kilograms or the reverse, a quarter off, or ten reps more.
    Typo,
    /// No open set; every set rated.
    Rated,
}

/// All of them.
pub const BEHAVIOURS: [Behaviour; 11] = [
    Behaviour::Failure,
    Behaviour::Short,
    Behaviour::Sticky,
    Behaviour::Key,
    Behaviour::KeyMix,
    Behaviour::Seventy,
    Behaviour::Flat,
    Behaviour::Steep,
    Behaviour::Layoff,
    Behaviour::Typo,
    Behaviour::Rated,
];

impl Behaviour {
    /// A short name, as in `tests/reference`.
    pub fn name(self) -> &'static str {
        match self {
            Behaviour::Failure => "failure",
            Behaviour::Short => "short",
            Behaviour::Sticky => "sticky",
            Behaviour::Key => "key",
            Behaviour::KeyMix => "keymix",
            Behaviour::Seventy => "seventy",
            Behaviour::Flat => "flat",
            Behaviour::Steep => "steep",
            Behaviour::Layoff => "layoff",
            Behaviour::Typo => "typo",
            Behaviour::Rated => "rated",
        }
    }

    /// How steep the athlete's reps are against load.
    pub(super) fn steep(self) -> f64 {
        match self {
            Behaviour::Flat => 0.7,
            Behaviour::Steep => 1.4,
            _ => 1.0,
        }
    }

    /// How often the key is pressed for an open set that was made.
    pub(super) fn presses(self) -> f64 {
        match self {
            Behaviour::Key => 1.0,
            Behaviour::KeyMix => 0.6,
            _ => 0.0,
        }
    }

    /// True for athletes half of whom rate their other sets.
    pub(super) fn may_rate(self) -> bool {
        !matches!(self, Behaviour::Key | Behaviour::KeyMix | Behaviour::Seventy)
    }
}

//! How far an exchange is: on standard error, and only on a terminal, once there is something to wait for.

use std::cell::Cell;

use indicatif::{ProgressBar, ProgressStyle};

use crate::say;

/// Counts the files of an exchange while it runs.
pub(crate) struct Progress {
    bar: ProgressBar,
    fetched: Cell<u64>,
    delivered: Cell<u64>,
}

impl Progress {
    /// Nothing yet.
    pub(crate) fn begin() -> Progress {
        let style = ProgressStyle::with_template("{spinner} {msg}");
        let style = style.unwrap_or_else(|_| ProgressStyle::default_spinner());
        let bar = ProgressBar::new_spinner().with_style(style);
        Progress { bar, fetched: Cell::new(0), delivered: Cell::new(0) }
    }

    /// A file was fetched.
    pub(crate) fn fetched(&self) {
        self.say(say::command::files_fetched(counted(&self.fetched)));
    }

    /// A file was delivered.
    pub(crate) fn delivered(&self) {
        self.say(say::command::files_delivered(counted(&self.delivered)));
    }

    fn say(&self, count: String) {
        self.bar.set_message(count);
        self.bar.tick();
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}

fn counted(count: &Cell<u64>) -> u64 {
    count.set(count.get() + 1);
    count.get()
}

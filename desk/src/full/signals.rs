//! Signals that end a program: seen, so that the terminal is given back before they do.

/// The signals that have come.
#[cfg(unix)]
pub(crate) struct Signals {
    flags: Vec<(i32, std::sync::Arc<std::sync::atomic::AtomicBool>)>,
}

#[cfg(unix)]
impl Signals {
    /// Watches for a closed terminal, a polite end and an interrupt, from now on.
    ///
    /// # Errors
    /// What the system says against it.
    pub(crate) fn watch() -> std::io::Result<Signals> {
        use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
        let watched = |signal: i32| {
            let flag = std::sync::Arc::default();
            signal_hook::flag::register(signal, std::sync::Arc::clone(&flag))?;
            Ok((signal, flag))
        };
        Ok(Signals {
            flags: [SIGHUP, SIGTERM, SIGINT]
                .map(watched)
                .into_iter()
                .collect::<Result<_, std::io::Error>>()?,
        })
    }

    /// A signal that has come.
    pub(crate) fn come(&self) -> Option<i32> {
        let come =
            |flag: &std::sync::atomic::AtomicBool| flag.load(std::sync::atomic::Ordering::Relaxed);
        self.flags.iter().find(|(_, flag)| come(flag)).map(|(signal, _)| *signal)
    }
}

/// Where there are no such signals.
#[cfg(not(unix))]
pub(crate) struct Signals;

#[cfg(not(unix))]
impl Signals {
    /// Nothing to watch.
    pub(crate) fn watch() -> std::io::Result<Signals> {
        Ok(Signals)
    }

    /// None ever comes.
    pub(crate) fn come(&self) -> Option<i32> {
        None
    }
}

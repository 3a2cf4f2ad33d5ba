//! Cues heard: the terminal's bell, and a speech program where the system has one.

use std::io::{IsTerminal, Write, stdout};
use std::process::{Child, Command, Stdio};

/// What may be heard.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Noise {
    /// The terminal's bell.
    pub(crate) bell: bool,
    /// Speech.
    pub(crate) speech: bool,
}

/// Speech programs, in the order they are tried.
const SPEAKERS: [&str; 2] = ["spd-say", "espeak-ng"];

/// Rings and speaks.
pub(crate) struct Sound {
    bell: bool,
    /// The speakers that have not failed yet.
    speakers: Vec<&'static str>,
    speaking: Option<Child>,
}

impl Sound {
    /// As much as may be heard.
    pub(crate) fn new(noise: Noise) -> Sound {
        let speakers = if noise.speech { SPEAKERS.to_vec() } else { Vec::new() };
        // Through a pipe a bell is one byte too many.
        let bell = noise.bell && stdout().is_terminal();
        Sound { bell, speakers, speaking: None }
    }

    /// Rings once and speaks the words. Never waits, and says nothing where it cannot.
    pub(crate) fn cue(&mut self, words: &[String]) {
        if words.is_empty() {
            return;
        }
        if self.bell {
            let _ = stdout().write_all(b"\x07").and_then(|()| stdout().flush());
        }
        self.speak(&words.join(", "));
    }

    fn speak(&mut self, words: &str) {
        // The newest cue counts: an older one that is still being spoken gives way.
        if let Some(mut earlier) = self.speaking.take()
            && !matches!(earlier.try_wait(), Ok(Some(_)))
        {
            let _ = earlier.kill();
            let _ = earlier.wait();
        }
        while let Some(speaker) = self.speakers.first() {
            let started = Command::new(speaker)
                .args(["--", words])
                .stdin(Stdio::null())
                .stdout(Stdio::null())
                .stderr(Stdio::null())
                .spawn();
            match started {
                Ok(child) => {
                    self.speaking = Some(child);
                    return;
                }
                Err(_) => drop(self.speakers.remove(0)),
            }
        }
    }
}

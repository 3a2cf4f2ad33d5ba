//! A session played by keys.

use std::fmt::Write;

use holdfast_core::journal::Role;
use holdfast_core::session::Tap;
use holdfast_core::{Holdfast, MassUnit, Start};
use holdfast_tests::{Carrier, Crew, Device, SMALL_PLAN};
use ratatui::Terminal;
use ratatui::backend::TestBackend;
use ratatui::buffer::Buffer;
use ratatui::crossterm::event::{KeyCode, KeyEvent, KeyModifiers};

use crate::full::theme::Theme;
use crate::session::full::draw::draw;
use crate::session::full::grant::grant;
use crate::session::full::keys;
use crate::session::full::model::{Mode, Model};

/// A session on a device in a folder of its own.
pub(in crate::session::full) struct Played {
    crew: Crew,
    pub(in crate::session::full) model: Model,
    /// True once a key left the session.
    pub(in crate::session::full) left: bool,
}

impl Played {
    pub(in crate::session::full) fn of(plan: &str, day: &str) -> Played {
        let crew = Crew::start(plan, &["Ana"]).unwrap();
        Played::begun(crew, day)
    }

    /// The same for an athlete who counts in pounds.
    pub(in crate::session::full) fn in_pounds(plan: &str, day: &str) -> Played {
        let mut crew = Crew::start(plan, &[]).unwrap();
        let start = Start {
            role: Role::Athlete,
            name: "Ana".into(),
            unit: MassUnit::Lb,
            chance: (0..80).map(|index| index + 7).collect(),
        };
        let ana = Device::started(crew.folder().join("ana"), start).unwrap();
        ana.exchange(&Carrier::new(crew.folder().join("carrier"))).unwrap();
        crew.athletes.push(ana);
        Played::begun(crew, day)
    }

    fn begun(crew: Crew, day: &str) -> Played {
        let screen = crew.athletes[0].tap(Tap::Begin { day: Some(day.into()) }).unwrap();
        Played { crew, model: Model::new(screen), left: false }
    }

    pub(in crate::session::full) fn small() -> Played {
        Played::of(SMALL_PLAN, "Any evening")
    }

    pub(in crate::session::full) fn device(&self) -> &Device {
        &self.crew.athletes[0]
    }

    pub(super) fn holdfast(&self) -> &Holdfast {
        &self.crew.athletes[0].holdfast
    }

    /// Lets time pass and asks again, as each frame does.
    pub(in crate::session::full) fn pass(&mut self, ms: i64) {
        self.device().pass(ms);
        let screen = self.device().today();
        self.model.refresh(screen);
    }

    /// A key a second after the last one, and what it asks for, done.
    pub(in crate::session::full) fn key(&mut self, code: KeyCode) {
        self.press(KeyEvent::new(code, KeyModifiers::NONE));
    }

    /// The same without the second.
    pub(in crate::session::full) fn key_at_once(&mut self, code: KeyCode) {
        self.press_at_once(KeyEvent::new(code, KeyModifiers::NONE));
    }

    /// The same device in another program, as it comes back.
    pub(super) fn come_back(&self) -> Played {
        let screen = self.device().open_again().unwrap().today(self.device().now()).unwrap();
        let crew = Crew::start(SMALL_PLAN, &[]).unwrap();
        Played { crew, model: Model::new(screen), left: false }
    }

    pub(super) fn press(&mut self, key: KeyEvent) {
        self.pass(1_000);
        self.press_at_once(key);
    }

    pub(super) fn press_at_once(&mut self, key: KeyEvent) {
        let wish = keys::key(&mut self.model, key);
        let at = self.device().now();
        let holdfast = &self.crew.athletes[0].holdfast;
        self.left |= grant(holdfast, &mut self.model, wish, &at);
    }

    /// A line in full, with the key that opens it and the one that ends it.
    pub(in crate::session::full) fn types(&mut self, text: &str) {
        if !matches!(self.model.mode, Mode::Typing(_)) {
            self.key(KeyCode::Char('e'));
        }
        for letter in text.chars() {
            self.key_at_once(KeyCode::Char(letter));
        }
        self.key(KeyCode::Enter);
    }

    /// What was said last; where nothing was, what is saved.
    pub(in crate::session::full) fn said(&self) -> &str {
        let saved = self.model.screen.saved_text.as_deref().unwrap_or_default();
        self.model.said.as_ref().map_or(saved, |(_, text)| text)
    }

    /// The revision: it grows with each entry.
    pub(super) fn revision(&self) -> u64 {
        self.model.screen.revision
    }

    /// What is drawn.
    pub(in crate::session::full) fn buffer(&self, width: u16, height: u16, theme: Theme) -> Buffer {
        let mut terminal = Terminal::new(TestBackend::new(width, height)).unwrap();
        terminal.draw(|frame| draw(frame, &self.model, theme)).unwrap();
        terminal.backend().buffer().clone()
    }

    /// What is drawn, as lines.
    pub(in crate::session::full) fn drawn(&self, width: u16, height: u16) -> String {
        text(&self.buffer(width, height, Theme::plain()))
    }
}

/// A buffer's letters, line by line.
pub(in crate::session::full) fn text(buffer: &Buffer) -> String {
    let mut text = String::new();
    for row in 0..buffer.area.height {
        let cells = (0..buffer.area.width).map(|column| buffer[(column, row)].symbol());
        let line: String = cells.collect();
        writeln!(text, "{}", line.trim_end()).unwrap();
    }
    text
}

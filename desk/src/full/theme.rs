//! Styles. A style only underlines what words, capitals and marks already say, so nothing is lost
//! without colour.

use ratatui::style::{Color, Modifier, Style};

/// Styles with or without colour.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Theme {
    colour: bool,
}

impl Theme {
    /// As this terminal and NO_COLOR want it.
    pub(crate) fn here() -> Theme {
        let choice = anstream::AutoStream::choice(&std::io::stdout());
        Theme { colour: choice != anstream::ColorChoice::Never }
    }

    /// Without colour.
    #[cfg(test)]
    pub(crate) fn plain() -> Theme {
        Theme { colour: false }
    }

    /// With colour, whatever the terminal says.
    #[cfg(test)]
    pub(crate) fn coloured_for_checks() -> Theme {
        Theme { colour: true }
    }

    fn coloured(self, style: Style, colour: Color) -> Style {
        if self.colour { style.fg(colour) } else { style }
    }

    /// What is read in its turn.
    pub(crate) fn usual() -> Style {
        Style::new()
    }

    /// What is read first.
    pub(crate) fn strong(self) -> Style {
        Style::new().add_modifier(Modifier::BOLD)
    }

    /// What is read last.
    pub(crate) fn quiet(self) -> Style {
        Style::new().add_modifier(Modifier::DIM)
    }

    /// Care comes first.
    pub(crate) fn care(self) -> Style {
        self.coloured(self.strong(), Color::Red)
    }

    /// Something to look at.
    pub(crate) fn warn(self) -> Style {
        self.coloured(self.strong(), Color::Yellow)
    }

    /// Done, saved.
    pub(crate) fn good(self) -> Style {
        self.coloured(Style::new(), Color::Green)
    }

    /// What the next key acts on.
    pub(crate) fn here_now(self) -> Style {
        self.coloured(self.strong(), Color::Cyan)
    }

    /// A key's name.
    pub(crate) fn key(self) -> Style {
        Style::new().add_modifier(Modifier::REVERSED)
    }
}

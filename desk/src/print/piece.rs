//! Pieces: sets with their loads, windows, holds.

use holdfast_core::session::{
    FlagView, HoldView, IntervalView, OptionView, PieceKindView, PieceView, SessionScreen,
    StrengthView,
};
use owo_colors::OwoColorize;

use super::{indented, table};

/// Every piece of a screen.
pub(crate) fn pieces(screen: &SessionScreen) -> String {
    screen.pieces.iter().map(piece).collect()
}

fn piece(piece: &PieceView) -> String {
    let name = piece.name.bold();
    let own = match &piece.kind {
        PieceKindView::Strength { view } => format!("\n{name}: {}", strength(view)),
        PieceKindView::Interval { view } => format!("\n{name}: {}", interval(view)),
        PieceKindView::Hold { view } => format!("\n{name}: {}", hold(view)),
        PieceKindView::Note { text } => format!("\n{name}\n  {text}\n"),
    };
    own + &flags(&piece.flags) + &options(&piece.options)
}

fn strength(view: &StrengthView) -> String {
    let mut text = format!("{}\n", view.heading);
    let warm_up: Vec<&str> = view.warm_up.iter().map(|set| set.text.as_str()).collect();
    if !warm_up.is_empty() {
        text += &format!("  warm-up: {}\n", warm_up.join(", "));
    }
    let mut rows = table(&["set", "load", "reps", "plates a side", "done", "why"]);
    // One reason for all is said once, below.
    let same = view.sets.len() > 1 && view.sets.iter().all(|set| set.why == view.sets[0].why);
    for set in &view.sets {
        let build = set.load.as_ref().and_then(|load| load.build.as_ref());
        let plates = build.map(|build| build.short.as_ref().unwrap_or(&build.text));
        let done = set.done.as_ref().map(|done| done.text.as_str());
        let why = set.why.as_deref().filter(|_| !same);
        rows.add_row([
            set.set.to_string().as_str(),
            &set.load_text,
            &set.reps_text,
            plates.map_or("", String::as_str),
            done.unwrap_or_default(),
            why.unwrap_or_default(),
        ]);
    }
    text += &indented(&rows, 2);
    if let Some(able) = &view.able {
        text += &format!("  {}\n", format!("an estimate, not a test: {}", able.text).dimmed());
    }
    if let (true, Some(why)) = (same, view.sets.first().and_then(|set| set.why.as_ref())) {
        text += &format!("  {why}\n");
    }
    for set in view.sets.iter().filter(|set| set.open) {
        let expected = set.expected.iter().map(|expected| format!("; {}", expected.text));
        let said = format!(
            "set {} is open: as many good reps as possible{}",
            set.set,
            expected.collect::<String>()
        );
        text += &format!("  {}\n", said.dimmed());
    }
    text
}

fn interval(view: &IntervalView) -> String {
    let mut text = format!("{}\n", view.heading);
    let logged = view.windows.iter().any(|window| window.reps.is_some());
    // Before the start one round says it all.
    let shown = if logged { view.windows.len() } else { view.stations.len() };
    let mut rows = table(&[]);
    for window in view.windows.iter().take(shown) {
        let done = window.done_text.as_deref().unwrap_or_default();
        rows.add_row([window.window.to_string().as_str(), &window.asked_text, done]);
    }
    text += &indented(&rows, 2);
    text
}

fn hold(view: &HoldView) -> String {
    let mut text = format!("{}\n", view.heading);
    let held = view.sides.iter().filter_map(|side| {
        let held = side.held_text.as_ref()?;
        let name = side.name.iter().map(|name| format!("{name}: ")).collect::<String>();
        Some(format!("{name}{held}"))
    });
    let held: Vec<String> = held.collect();
    if !held.is_empty() {
        text += &format!("  held {}\n", held.join(", "));
    }
    if let Some(range) = &view.range {
        let read: Vec<&str> = range.readings.iter().map(|reading| reading.text.as_str()).collect();
        let read =
            if read.is_empty() { "measure before and after".into() } else { read.join("; ") };
        text += &format!("  {}: {read}\n", range.name);
        for judged in &range.judged {
            text += &format!("  {judged}\n");
        }
    }
    text
}

/// Open flags with what to do.
pub(crate) fn flags(flags: &[FlagView]) -> String {
    let mut text = String::new();
    for flag in flags {
        text += &format!("  {} {}\n", "discomfort:".red().bold(), flag.text);
        for line in &flag.advice.lines {
            text += &format!("    {line}\n");
        }
    }
    text
}

fn options(options: &[OptionView]) -> String {
    if options.is_empty() {
        return String::new();
    }
    let each: Vec<String> = options
        .iter()
        .map(|option| {
            let taken = if option.taken { " [taken]" } else { "" };
            format!("{} for {}{taken}", option.key, option.because_text)
        })
        .collect();
    let mut text = format!("  {}\n", format!("options: {}", each.join(", ")).dimmed());
    for option in options {
        if let Some(suggested) = &option.suggested {
            text += &format!("  {} {}: {suggested}\n", "consider".yellow(), option.key);
        }
    }
    text
}

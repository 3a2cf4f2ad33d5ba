//! Pieces: sets with their loads, windows, holds.

use holdfast_core::companion::{
    FlagView, HoldView, IntervalView, LoadView, OptionView, PieceView, SessionScreen, SetView,
    SideView, StrengthView, WarmUpView, WindowView,
};
use holdfast_core::load::Reason;
use owo_colors::OwoColorize;

use super::{indented, table};

/// Every piece of a screen.
pub(crate) fn pieces(screen: &SessionScreen) -> String {
    screen.pieces.iter().map(piece).collect()
}

fn piece(piece: &PieceView) -> String {
    match piece {
        PieceView::Strength { view } => strength(view),
        PieceView::Interval { view } => interval(view),
        PieceView::Hold { view } => hold(view),
        PieceView::Note { name, text } => format!("\n{}\n  {text}\n", name.bold()),
    }
}

fn strength(view: &StrengthView) -> String {
    let bar = if view.bar.is_empty() { String::new() } else { format!(" on the {}", view.bar) };
    let mut text =
        format!("\n{}: {}{bar}, rest {}\n", view.name.bold(), view.movement, view.rest_text);
    if !view.warm_up.is_empty() {
        text += &format!("  warm-up: {}\n", warm_up(view));
    }
    let mut rows = table(&["set", "load", "reps", "plates a side", "done", "why"]);
    // One reason for all is said once, below.
    let same = view.sets.len() > 1 && view.sets.iter().all(|set| set.why == view.sets[0].why);
    for set in &view.sets {
        let load = set.load.as_ref();
        let open = if set.open { "+" } else { "" };
        rows.add_row([
            set.set.to_string(),
            load_text(set),
            format!("{}{open}", set.asked),
            load.map_or(String::new(), |load| plates(&load.build)),
            done_text(set, &view.movement),
            if same { String::new() } else { set.why.clone() },
        ]);
    }
    text += &indented(&rows, 2);
    if let Some(able) = &view.able {
        text += &format!("  {}\n", format!("an estimate, not a test: {}", able.text).dimmed());
    }
    if let (true, Some(first)) = (same, view.sets.first()) {
        text += &format!("  {}\n", first.why);
    }
    for set in view.sets.iter().filter(|set| set.open) {
        let expected =
            set.expected.as_ref().map_or(String::new(), |expected| format!("; {}", expected.text));
        let said = format!("+ open set: as many good reps as possible{expected}");
        text += &format!("  {}\n", said.dimmed());
    }
    text + &flags(&view.flags) + &options(&view.options)
}

/// `20 + 5` of `20 + 5 kg a side`: the column's head says the rest.
fn plates(build: &str) -> String {
    let short = build.strip_suffix(" a side").unwrap_or(build);
    let short = short.strip_suffix(" kg").or(short.strip_suffix(" lb")).unwrap_or(short);
    short.to_owned()
}

/// The warm-up sets in one line.
pub(crate) fn warm_up(view: &StrengthView) -> String {
    let one = |set: &WarmUpView| {
        let LoadView { text, build, .. } = &set.load;
        format!("{text} x {} ({build})", set.reps)
    };
    view.warm_up.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// The load of a set in a few words.
pub(crate) fn load_text(set: &SetView) -> String {
    match &set.load {
        Some(load) => load.text.clone(),
        None if set.reason == Reason::Free => "none".into(),
        None => "you say".into(),
    }
}

/// What was done in a set, in a few words; empty until it is.
pub(crate) fn done_text(set: &SetView, movement: &str) -> String {
    let Some(done) = &set.done else { return String::new() };
    let reserve = done.reserve.map_or(String::new(), |left| format!(", {left} in reserve"));
    let short = if done.made { "" } else { " (short)" };
    let conflict = if done.conflict { " (two versions)" } else { "" };
    let load =
        if done.load_text.is_empty() { String::new() } else { format!("{} x ", done.load_text) };
    let other = if done.movement == movement { "" } else { done.movement.as_str() };
    let other = if other.is_empty() { String::new() } else { format!(" ({other})") };
    format!("{load}{}{reserve}{short}{other}{conflict}", done.reps)
}

/// The set to do next, in one line.
pub(crate) fn set_line(view: &StrengthView, set: &SetView) -> String {
    let open = if set.open { " or more" } else { "" };
    let what = match &set.load {
        Some(load) if load.build.is_empty() => format!("{} x {}{open}", load.text, set.asked),
        Some(load) => {
            let change = match load.change.as_str() {
                "" => String::new(),
                change => format!("; {change}"),
            };
            format!("{} ({}{change}) x {}{open}", load.text, load.build, set.asked)
        }
        None if set.reason == Reason::Free => format!("{}{open} reps", set.asked),
        None => format!("{}{open} reps; you say the load: `LOAD x {}`", set.asked, set.asked),
    };
    format!("{}, set {} of {}: {what}", view.movement, set.set, view.sets.len())
}

fn interval(view: &IntervalView) -> String {
    let count = view.windows.len() as u32;
    let mut text = format!(
        "\n{}: {count} windows of {}, {} rounds, aim for {} to spare\n",
        view.name.bold(),
        view.window_text,
        view.rounds,
        view.margin_text
    );
    let logged = view.windows.iter().any(|window| window.reps.is_some());
    // Before the start one round says it all.
    let shown = if logged { count } else { count / view.rounds.max(1) };
    let mut rows = table(&[]);
    for window in view.windows.iter().take(shown as usize) {
        rows.add_row([window.window.to_string(), asked_text(window), window_done(window)]);
    }
    text += &indented(&rows, 2);
    text + &flags(&view.flags) + &options(&view.options)
}

/// What a window asks for.
pub(crate) fn asked_text(window: &WindowView) -> String {
    let load =
        if window.load_text.is_empty() { String::new() } else { format!(", {}", window.load_text) };
    format!("{} x {}{load}", window.asked, window.movement)
}

/// What was done in a window; empty until it is.
pub(crate) fn window_done(window: &WindowView) -> String {
    let Some(reps) = window.reps else { return String::new() };
    let spare = match window.spare_text.as_str() {
        "" => String::new(),
        spare => format!(", {spare} to spare"),
    };
    let tight = if window.tight { " (tight)" } else { "" };
    format!("{reps} done{spare}{tight}")
}

/// The window to do next, in one line.
pub(crate) fn window_line(view: &IntervalView, window: &WindowView) -> String {
    format!(
        "{}, window {} of {}: {}",
        view.name,
        window.window,
        view.windows.len(),
        asked_text(window)
    )
}

fn hold(view: &HoldView) -> String {
    let sides = match view.sides.len() {
        1 => "one side".to_owned(),
        count => format!("{count} sides"),
    };
    let mut text = format!(
        "\n{}: {}, {} a side, {sides}, {}\n",
        view.name.bold(),
        view.stretch,
        view.hold_text,
        view.technique.text().replace('-', " and ")
    );
    let held = view.sides.iter().filter(|side| side.held_ms.is_some());
    let held: Vec<String> =
        held.map(|side| format!("side {}: {}{}", side.side, side.held_text, short(side))).collect();
    if !held.is_empty() {
        text += &format!("  held {}\n", held.join(", "));
    }
    if let Some(range) = &view.range {
        let read: Vec<String> = range
            .readings
            .iter()
            .map(|it| {
                let side = it.side.map_or(String::new(), |side| format!(" side {side}"));
                format!("{}{side} {}", it.when.text(), it.text)
            })
            .collect();
        let read =
            if read.is_empty() { "measure before and after".into() } else { read.join(", ") };
        text += &format!("  {}: {read}\n", range.name);
        for judged in &range.judged {
            text += &format!("  {judged}\n");
        }
    }
    text + &flags(&view.flags)
}

/// Why a side is short, in brackets after its seconds; empty where it is not.
pub(crate) fn short(side: &SideView) -> String {
    match side.short_text.as_str() {
        "" => String::new(),
        why => format!(" ({why})"),
    }
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
    for option in options.iter().filter(|option| !option.suggested.is_empty()) {
        text += &format!("  {} {}: {}\n", "consider".yellow(), option.key, option.suggested);
    }
    text
}

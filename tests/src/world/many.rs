//! Many stories, one after the other on every core, and where a long run of them goes on.

use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};
use std::{env, fs, thread};

use super::{Played, play};

/// Stories that a long run comes to in the end.
const IN_ALL: u64 = 1_000_000;

/// Seconds that one part of a long run takes, unless `HOLDFAST_SECONDS` says otherwise: two hours.
const SECONDS: u64 = 2 * 60 * 60;

/// Stories after which a long run notes how far it has come.
const PART: u64 = 5_000;

/// How many stories to play: as `HOLDFAST_STORIES` says, and so many otherwise.
pub fn stories_or(usual: u64) -> u64 {
    given("HOLDFAST_STORIES").unwrap_or(usual)
}

fn given(variable: &str) -> Option<u64> {
    let text = env::var(variable).ok()?;
    Some(text.parse().unwrap_or_else(|_| panic!("{variable} is a whole number")))
}

/// Plays so many stories from a seed on, and prints how many they were, how fast, and the most memory that took.
///
/// # Panics
/// With what does not hold in one of them, its seed first.
pub fn play_all(first: u64, stories: u64) -> Played {
    play_until(first, stories, None).1
}

/// Goes on with a long run where it stopped, for two hours or until it has come to a million. Where it stands is kept in
/// the build folder. `HOLDFAST_SEED`, where it is given, says where to begin; `HOLDFAST_STORIES` how many at most.
///
/// # Panics
/// As [`play_all`]; the run goes on before the part that failed.
pub fn go_on() -> Played {
    let began = Instant::now();
    let time = Duration::from_secs(given("HOLDFAST_SECONDS").unwrap_or(SECONDS));
    let kept = kept_at();
    let read = fs::read_to_string(&kept).ok();
    let done: u64 = read.and_then(|text| text.trim().parse().ok()).unwrap_or(0);
    let first = given("HOLDFAST_SEED").unwrap_or(done + 1);
    let all = IN_ALL.saturating_sub(first - 1);
    let wanted = all.min(stories_or(all));
    println!("stories from seed {first}; {done} of {IN_ALL} were played before");
    let (mut played, mut sum) = (0, Played::default());
    while played < wanted && began.elapsed() < time {
        let left = time.saturating_sub(began.elapsed());
        let part = PART.min(wanted - played);
        let (some, of_part) = play_until(first + played, part, Some(left));
        played += some;
        sum.add(of_part);
        // A part from elsewhere says nothing of what lies between.
        if first == done + 1 {
            fs::write(&kept, format!("{}\n", done + played)).expect("the build folder is there");
        }
    }
    sum
}

/// The file that says how many stories of the long run were played.
fn kept_at() -> PathBuf {
    let program = env::current_exe().expect("this program lies somewhere");
    let build = program.ancestors().find(|folder| folder.join("CACHEDIR.TAG").is_file());
    build.unwrap_or_else(|| program.parent().expect("a folder")).join("worlds-played")
}

/// Plays stories until there are so many or the time is over. Says how many were played, without a gap.
fn play_until(first: u64, stories: u64, time: Option<Duration>) -> (u64, Played) {
    let began = Instant::now();
    let (next, stopped) = (AtomicU64::new(0), AtomicBool::new(false));
    let tell = || {
        let mut all = Played::default();
        loop {
            let over = time.is_some_and(|time| began.elapsed() > time);
            if over || stopped.load(Ordering::Relaxed) {
                return all;
            }
            let at = next.fetch_add(1, Ordering::Relaxed);
            if at >= stories {
                return all;
            }
            match play(first + at) {
                Ok(played) => all.add(played),
                Err(why) => {
                    stopped.store(true, Ordering::Relaxed);
                    panic!("{why}");
                }
            }
            if at % 1_000 == 999 {
                println!("{} stories, {:.0} s", at + 1, began.elapsed().as_secs_f64());
            }
        }
    };
    let threads = thread::available_parallelism().map_or(2, usize::from);
    let mut all = Played::default();
    thread::scope(|scope| {
        let telling: Vec<_> = (0..threads).map(|_| scope.spawn(tell)).collect();
        telling.into_iter().for_each(|one| all.add(one.join().expect("a story held")));
    });
    let played = next.load(Ordering::Relaxed).min(stories);
    let rate = played as f64 / began.elapsed().as_secs_f64();
    println!(
        "{played} stories from seed {first}, {rate:.1} a second, at most {} MB: {all:?}",
        peak_megabytes().map_or_else(|| "?".to_owned(), |peak| peak.to_string())
    );
    (played, all)
}

/// The most memory that this process had, in megabytes; none where the system does not say.
fn peak_megabytes() -> Option<u64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kilobytes: u64 = peak.split_whitespace().next()?.parse().ok()?;
    Some(kilobytes / 1024)
}

//! The nights the clocks change, and journeys between zones, by the IANA database.
//!
//! A phone's wall clock counts UTC; a zone only changes its offset. So a clock in the core must come
//! out the same through every transition there is, while the local time on the wall jumps: in one
//! boot by the boot clock, and through a reboot by UTC.
//!
//! Leap seconds do not matter. UTC as phones keep it has none: one is either smeared over a day, an
//! error of 12 parts in a million, or steps the wall clock by a second once. Within a boot the wall
//! clock is not asked; across boots a hold is off by a second at the most.

use chrono::{DateTime, Days, NaiveDate, Offset, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;
use holdfast_core::clock::{Act, HoldPhase, HoldSpec, Mark, Trust, hold_state};
use holdfast_core::{Instant, Millis};
use holdfast_tests::taps::{held, squat};
use holdfast_tests::views::hold;
use holdfast_tests::{MINUTE, Phone, SMALL_PLAN, changed};

/// Changes by an hour, by half an hour, backwards in winter, a whole day left out, an offset of
/// minutes; north and south.
const ZONES: [Tz; 9] = [
    Tz::Europe__Berlin,
    Tz::America__New_York,
    Tz::Australia__Lord_Howe,
    Tz::Europe__Dublin,
    Tz::Africa__Casablanca,
    Tz::Pacific__Apia,
    Tz::America__St_Johns,
    Tz::Pacific__Chatham,
    Tz::America__Santiago,
];

fn offset_min(zone: Tz, at: DateTime<Utc>) -> i32 {
    zone.offset_from_utc_datetime(&at.naive_utc()).fix().local_minus_utc() / 60
}

/// The minutes at which a zone's offset changes between two years, found by looking at every one
/// of the days on which it does.
fn transitions(zone: Tz, years: std::ops::Range<i32>) -> Vec<DateTime<Utc>> {
    let first = NaiveDate::from_ymd_opt(years.start, 1, 1).unwrap();
    let last = NaiveDate::from_ymd_opt(years.end, 1, 1).unwrap();
    let midnight = |date: NaiveDate| date.and_hms_opt(0, 0, 0).unwrap().and_utc();
    let mut found = Vec::new();
    for date in first.iter_days().take_while(|date| *date < last) {
        let (from, to) = (midnight(date), midnight(date + Days::new(1)));
        if offset_min(zone, from) == offset_min(zone, to) {
            continue;
        }
        let minutes = (0..=24 * 60).map(|minute| from + TimeDelta::minutes(minute));
        let minutes: Vec<_> = minutes.collect();
        let change = minutes.windows(2).find(|w| offset_min(zone, w[0]) != offset_min(zone, w[1]));
        found.extend(change.map(|change| change[1]));
    }
    found
}

/// A moment on a phone that is in a zone.
fn instant(zone: Tz, at: DateTime<Utc>, boot_ms: i64, boot: &str) -> Instant {
    let wall_ms = at.timestamp_millis();
    Instant { wall_ms, offset_min: offset_min(zone, at), boot_ms, boot_id: boot.into() }
}

#[test]
fn a_hold_through_every_change_of_the_clocks_is_as_long_as_it_was() {
    let spec = HoldSpec {
        ready_ms: 0,
        hold_ms: 1_200_000,
        switch_ms: 0,
        sides: 1,
        contract_ms: 0,
        relax_ms: 0,
    };
    let mut seen = 0;
    for zone in ZONES {
        for change in transitions(zone, 2010..2028) {
            let (begun, now) = (change - TimeDelta::minutes(4), change + TimeDelta::minutes(3));
            let begin = instant(zone, begun, 1_000_000, "a");
            let marks = [Mark { act: Act::Begin, at: begin.clone() }];
            let here = instant(zone, now, 1_000_000 + 7 * MINUTE, "a");
            let rebooted = instant(zone, now, 30_000, "b");
            // The wall shows something else: the hands have moved by more or less than 7 min.
            let shown = here.local().naive_local() - begin.local().naive_local();
            assert_ne!(shown, TimeDelta::minutes(7), "{zone} {change}");
            for (at, trust) in [(here, Trust::Boot), (rebooted, Trust::Wall)] {
                let state = hold_state(&spec, &marks, &at);
                assert_eq!(state.held_ms, [7 * MINUTE], "{zone} {change}");
                assert_eq!(state.trust, trust);
                let left_ms = 13 * MINUTE;
                assert_eq!(state.phase, HoldPhase::Holding { side: 1, left_ms, push: false });
            }
            seen += 1;
        }
    }
    // At the very least two a year in the zones that keep changing all along.
    assert!(seen > 9 * 18, "{seen} transitions");
}

#[test]
fn a_session_through_the_night_the_clocks_go_back() {
    let zone = Tz::Europe__Berlin;
    let [change] = transitions(zone, 2026..2027)[1..] else { panic!("two changes in 2026") };
    assert_eq!(change.to_rfc3339(), "2026-10-25T01:00:00+00:00", "03:00 becomes 02:00");
    // The plan of the small day, so early that this night is in it.
    let plan = changed(SMALL_PLAN, "starts = 2026-11-02", "starts = 2026-10-19");
    let begun = instant(zone, change - TimeDelta::minutes(2), 5_000_000, "night");
    let mut phone = Phone::begun(&plan, begun);
    phone.tap(squat(None, Some(60), Some(8), None));
    phone.pass(100_000);
    assert_eq!(phone.rest().rested, Some(Millis(100_000)));
    phone.calves(Act::Begin);
    // Across the change, and off for half a minute in the midst of it.
    phone.pass(30_000).reboot(30_000).pass(30_000);
    let now = Utc.timestamp_millis_opt(phone.now().wall_ms).unwrap();
    assert!(now > change);
    phone.zone(offset_min(zone, now));
    assert_eq!(phone.now().local().format("%H:%M:%S").to_string(), "02:01:10");
    let state = hold(&phone.screen()).clock.clone().unwrap();
    assert_eq!((state.held, state.trust), (vec![Millis(85_000), Millis(0)], Trust::Wall));
    let screen = phone.tap(held(&[], None));
    assert_eq!(hold(&screen).sides[0].held, Some(Millis(85_000)));
}

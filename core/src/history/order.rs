//! The order in which things were done: the journal's own, and what was written afterwards at its date.

use chrono::NaiveDate;

use crate::store::{Logged, date_of};

/// Puts what was written afterwards where its date says, among records in the order they were written.
///
/// All others stay in the journal's order, whatever a wrong wall clock dated them: of their dates those are
/// believed that rise with it, as many as can.
pub(crate) fn in_order<T>(logged: Vec<Logged<T>>) -> Vec<Logged<T>> {
    if logged.iter().all(|one| one.on.is_none()) {
        return logged;
    }
    let (mut afterwards, written): (Vec<_>, Vec<_>) =
        logged.into_iter().partition(|one| one.on.is_some());
    // What was written of one date keeps its own order.
    afterwards.sort_by_key(date_of);
    let dates: Vec<NaiveDate> = written.iter().map(date_of).collect();
    let believed = rising(&dates);
    let mut afterwards = afterwards.into_iter().peekable();
    let mut ordered = Vec::with_capacity(dates.len() + afterwards.len());
    for (at, one) in written.into_iter().enumerate() {
        while let Some(next) =
            afterwards.next_if(|next| place(&dates, &believed, date_of(next)) <= at)
        {
            ordered.push(next);
        }
        ordered.push(one);
    }
    ordered.extend(afterwards);
    ordered
}

/// How many records stand before a date: all up to the last one of that date or earlier whose own is believed.
fn place(dates: &[NaiveDate], believed: &[usize], date: NaiveDate) -> usize {
    let before = believed.partition_point(|at| dates[*at] <= date);
    before.checked_sub(1).map_or(0, |last| believed[last] + 1)
}

/// Where a longest run of dates that never fall stands, the places rising. Found by patience sorting: Fredman,
/// Discrete Mathematics 1975;11(1):29-35.
fn rising(dates: &[NaiveDate]) -> Vec<usize> {
    // For each length of a run, the place its least last date stands at; for each place the one before it.
    let mut ends: Vec<usize> = Vec::new();
    let mut before: Vec<Option<usize>> = Vec::with_capacity(dates.len());
    for (at, date) in dates.iter().enumerate() {
        let length = ends.partition_point(|end| dates[*end] <= *date);
        before.push(length.checked_sub(1).map(|shorter| ends[shorter]));
        match ends.get_mut(length) {
            Some(end) => *end = at,
            None => ends.push(at),
        }
    }
    let mut run: Vec<usize> =
        std::iter::successors(ends.last().copied(), |at| before[*at]).collect();
    run.reverse();
    run
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use chrono::Datelike;

    use super::*;
    use crate::id::{DeviceId, PersonId, RecordId, random};
    use crate::journal::EntryId;

    const DAY_MS: i64 = 24 * 60 * 60 * 1000;

    /// Something written on a day of November 2026, about another one where that is said.
    fn logged(name: u64, written: i64, about: Option<u32>) -> Logged<u64> {
        let first = NaiveDate::from_ymd_opt(2026, 11, 1).unwrap();
        let id = random([0; 16]);
        Logged {
            record: RecordId(id),
            person: PersonId(id),
            id: EntryId { device: DeviceId(id), number: name },
            first_ms: 1_793_491_200_000 + written * DAY_MS,
            placed: 0,
            offset_min: 0,
            on: about.map(|day| first.with_day(day + 1).unwrap()),
            heads: 1,
            body: name,
        }
    }

    fn names(ordered: Vec<Logged<u64>>) -> Vec<u64> {
        ordered.into_iter().map(|one| one.body).collect()
    }

    #[test]
    fn what_was_written_afterwards_stands_at_its_date() {
        let written = [(1, 2, None), (2, 4, None), (3, 9, None), (4, 9, Some(4)), (5, 9, Some(4))];
        let ordered = written.map(|(name, day, about)| logged(name, day, about)).into();
        assert_eq!(names(in_order(ordered)), [1, 2, 4, 5, 3]);
    }

    /// A clock that was a year ahead, or one of 1970, moves nothing else.
    #[test]
    fn a_wrong_clock_moves_nothing_else() {
        for wrong in [365, -20_000] {
            for at in 0..=3_usize {
                let mut written = vec![logged(1, 2, None), logged(2, 4, None), logged(3, 6, None)];
                written.insert(at, logged(9, wrong, None));
                written.push(logged(5, 9, Some(4)));
                let ordered = names(in_order(written));
                let right: Vec<u64> = ordered.into_iter().filter(|name| *name != 9).collect();
                assert_eq!(right, [1, 2, 5, 3], "{wrong} {at}");
            }
        }
    }

    proptest! {
        /// With right clocks the dates rise, and the rest keeps its order.
        #[test]
        fn with_right_clocks_it_is_the_order_of_dates(
            days in proptest::collection::vec(0_i64..20, 0..12),
            about in proptest::collection::vec(0_u32..20, 0..6),
        ) {
            let mut days = days;
            days.sort_unstable();
            let written = days.iter().zip(0..).map(|(day, name)| logged(name, *day, None));
            let afterwards = about.iter().zip(100..).map(|(day, name)| logged(name, 25, Some(*day)));
            let ordered = in_order(written.chain(afterwards).collect());
            prop_assert!(ordered.is_sorted_by_key(date_of));
            let rest = ordered.iter().filter(|one| one.on.is_none()).map(|one| one.body);
            prop_assert!(rest.eq(0..days.len() as u64));
        }
    }
}

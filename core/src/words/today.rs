//! The day on which something is read: a date of another year names its year.

use std::cell::Cell;

use chrono::{Datelike, NaiveDate};

thread_local! {
    static TODAY: Cell<Option<NaiveDate>> = const { Cell::new(None) };
}

/// Does something that is read on a day; afterwards, and after a panic too, it is as before.
pub(crate) fn read_on<T>(today: NaiveDate, work: impl FnOnce() -> T) -> T {
    struct Back(Option<NaiveDate>);
    impl Drop for Back {
        fn drop(&mut self) {
            TODAY.set(self.0);
        }
    }
    let _back = Back(TODAY.replace(Some(today)));
    work()
}

/// The year of a date, where whoever reads it would take it for another; none where nobody said when it is read.
pub(super) fn other_year(date: NaiveDate) -> Option<i32> {
    let today = TODAY.get()?;
    (today.year() != date.year()).then(|| date.year())
}

#[cfg(test)]
mod tests {
    use super::super::day;
    use super::*;

    #[test]
    fn a_date_of_another_year_names_it() {
        let date = |text: &str| text.parse::<NaiveDate>().unwrap();
        let read = |today: &str, on: &str| read_on(date(today), || day(date(on)));
        assert_eq!(read("2026-11-28", "2026-01-06"), "Tue 6 Jan");
        assert_eq!(read("2027-01-02", "2026-12-29"), "Tue 29 Dec 2026");
        assert_eq!(read("2026-12-29", "2027-01-05"), "Tue 5 Jan 2027");
        let german =
            catalogue::speaking(catalogue::Language::De, || read("2027-01-02", "2026-12-29"));
        assert_eq!(german, "Di 29. Dez. 2026");
        assert_eq!(day(date("2026-12-29")), "Tue 29 Dec", "nobody says when it is read");
    }
}

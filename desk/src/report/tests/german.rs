//! The report in German.

use catalogue::{Language, speaking};

use super::sample::{crew, pounds};
use super::{body, charts, elements, html, page, sample};
use crate::print::units::NO_BREAK;
use crate::say;

fn german() -> String {
    speaking(Language::De, || page(&crew()))
}

/// What stands over something: headings, columns, terms, labels of cells.
fn headings(page: &str) -> Vec<&str> {
    let starts =
        ["<h2>", "<h3>", "scope=\"col\">", "class=\"number\">", "<dt>", "data-label=\"", "<i>"];
    let found = |start| page.split(start).skip(1).filter_map(|rest| rest.split(['<', '"']).next());
    starts.into_iter().flat_map(found).filter(|text| text.contains(char::is_alphabetic)).collect()
}

#[test]
fn it_is_well_formed_and_says_so() {
    let page = german();
    assert!(page.starts_with("<!DOCTYPE html>\n<html lang=\"de\">"));
    body(&page);
    for chart in charts(&page) {
        elements(chart);
    }
}

#[test]
fn no_heading_is_english() {
    let (english, german) = (page(&crew()), german());
    let (english, german) = (headings(&english), headings(&german));
    assert!(english.len() > 40 && english.len() == german.len());
    let data = |text: &str| text.ends_with("kg") || text.ends_with("lb");
    for (english, german) in english.into_iter().zip(german) {
        assert!(english != german || data(english), "{english}");
    }
}

#[test]
fn dates_numbers_and_sentences_are_german() {
    let page = german().replace(NO_BREAK, " ");
    for shown in [
        "<time datetime=\"2026-11-21\">Sa 21. Nov. 2026</time>",
        "<time datetime=\"2026-11-20\">Fr 20. Nov.</time>",
        ">6 von 6<",
        ">noch nie<",
        "<bdi>Squat</bdi>, 8-6-5-5 oder mehr",
        "Ohne Angabe der Anstrengung: 1 von 6 Einheiten.",
        "Back squat, 8-6-5-5 oder mehr",
        "10. Nov. 4 von 5; 17. Nov. 9 von 5.",
        "3. Nov. vorher 9,4 cm und nachher 10,3 cm",
        "Band: der erste Messwert ± 1,9 cm, der Messfehler.",
        "2. Nov. 15 min 12 s",
        "<bdi>Row lying on the bench</bdi> statt <bdi>Bent-over row</bdi>",
        "Knie zur Wand: 1,9 cm (",
        "Schienbeinwinkel im Ausfallschritt: 4,7° (",
    ] {
        assert!(page.contains(shown), "{shown}");
    }
    // On axes and beside points, dates and decimals too.
    let range = charts(&page).into_iter().find(|chart| chart.contains("cm, knee to wall")).unwrap();
    let marks = range.split_once("</title>").unwrap().1;
    assert!(marks.contains("9,4") && marks.contains("10. Nov.") && !marks.contains("9.4"));
}

#[test]
fn a_single_session_is_one() {
    let mut member = pounds();
    member.sessions[0].load = None;
    let members = [member];
    let page = speaking(Language::De, || html(&sample::board(&members), &members).unwrap());
    assert!(page.contains("Ohne Angabe der Anstrengung: 1 von 1 Einheit."));
    let reps = || [say::report::note_reps(1), say::report::note_reps(5)];
    let [one, five] = speaking(Language::De, reps);
    assert!(
        one.ends_with("1 geplante Wiederholung.") && five.ends_with("5 geplante Wiederholungen.")
    );
}

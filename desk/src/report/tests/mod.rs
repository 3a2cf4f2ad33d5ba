//! The report as a whole, from screens made by hand.

mod contrast;
mod german;
mod sample;

use holdfast_core::coach::{AttentionKind, MemberScreen, RangePoint};
use holdfast_core::plan::Protocol;
use holdfast_core::{Mass, MassUnit, care};
use quick_xml::Reader;
use quick_xml::events::Event;

use super::html;
use crate::print::units::NO_BREAK;
use crate::print::words::reading;
use sample::{HOSTILE, board, crew, date, empty, kg, look, point, range, session};

fn page(members: &[MemberScreen]) -> String {
    html(&board(members), members).unwrap()
}

fn charts(page: &str) -> Vec<&str> {
    let starts = page.match_indices("<svg ").map(|(start, _)| &page[start..]);
    starts.map(|rest| &rest[..rest.find("</svg>").unwrap() + 6]).collect()
}

/// Counts the elements, so that text that only looks like one is seen not to be.
fn elements(xml: &str) -> usize {
    let mut reader = Reader::from_str(xml);
    let mut count = 0;
    loop {
        match reader.read_event().unwrap() {
            Event::Eof => return count,
            Event::Start(tag) | Event::Empty(tag) => {
                assert!(tag.attributes().all(|attribute| attribute.is_ok()));
                count += 1;
            }
            Event::GeneralRef(name) => assert!(name.is_char_ref() || name.len() < 5),
            _ => {}
        }
    }
}

/// Checks that the page is well-formed, and returns its body. (What is in the head needs no ends.)
fn body(page: &str) -> &str {
    let body = &page[page.find("<body>").unwrap()..page.find("</html>").unwrap()];
    let (mut reader, mut depth) = (Reader::from_str(body), 0);
    loop {
        match reader.read_event().unwrap() {
            Event::Eof => break,
            Event::Start(_) => depth += 1,
            Event::End(_) => depth -= 1,
            _ => {}
        }
    }
    assert_eq!(depth, 0);
    body
}

#[test]
fn the_file_is_alone_and_holds_no_script() {
    let page = page(&crew());
    for foreign in ["<script", "http", "url(", "@import", "<img", "<link", "src="] {
        assert!(!page.to_lowercase().contains(foreign), "{foreign}");
    }
    assert!(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
    assert!(
        page.contains("<title>Holdfast report, Sat 21 Nov 2026: Cellar block one, week 3 of 3")
    );
}

#[test]
fn words_of_people_stay_words() {
    let mut members = crew();
    members[0].attention = vec![look(AttentionKind::Pain, "<b onclick=x>\"'&")];
    members[0].name = "<b>&\"".into();
    members[0].lifts[0].movement = HOSTILE.into();
    members[0].ranges[0].name = HOSTILE.into();
    members[0].ranges[0].unit = HOSTILE.into();
    members[0].regions[0].region = HOSTILE.into();
    members[0].options[0].because = HOSTILE.into();
    members[0].options[0].option = HOSTILE.into();
    members[0].proposals[0].piece = HOSTILE.into();
    members[0].discomfort[0].text = HOSTILE.into();
    let mut board = board(&members);
    board.heading = HOSTILE.into();
    board.arrivals = vec![HOSTILE.into()];
    let page = html(&board, &members).unwrap();
    assert!(!page.contains("<script") && !page.contains("<b onclick") && !page.contains("<b>&"));
    assert!(page.contains("<bdi>&#60;b&#62;&#38;&#34;</bdi>"));
    assert!(page.contains("Søn") && page.contains("Żółwia Ōkami") && page.contains("Íñigo"));
    assert!(page.contains("&#60;script&#62;alert(&#39;x&#39;)&#60;/script&#62;&#34;&#38; Søn"));
    for chart in charts(&page) {
        elements(chart);
    }
    body(&page);
}

/// Somebody whose name is written from right to left turns nothing around it: it stands in an element of
/// its own, or between isolates where no element can be.
#[test]
fn names_of_either_direction_stay_in_their_place() {
    const NAME: &str = "נועה 12";
    let mut members = crew();
    members[0].name = NAME.into();
    members[0].options[0].movement = NAME.into();
    members[0].proposals[0].movement = NAME.into();
    members[0].proposals[0].piece = NAME.into();
    members[0].lifts[0].movement = NAME.into();
    let mut board = board(&members);
    board.heading = NAME.into();
    let page = html(&board, &members).unwrap();
    for (at, _) in page.match_indices(NAME) {
        let before = &page[..at];
        let alone = before.ends_with("<bdi>") || before.ends_with("<h1>");
        assert!(alone || before.ends_with('\u{2068}'), "{}", &before[before.len() - 60..]);
    }
    assert!(page.matches(NAME).count() > 8);
}

#[test]
fn every_chart_is_well_formed_and_in_the_pages_colours() {
    let page = page(&crew());
    let charts = charts(&page);
    // One with everything: lift, weeks, range, two regions; in pounds: lift, weeks, range.
    assert_eq!(charts.len(), 5 + 3);
    for chart in charts {
        assert!(elements(chart) > 10, "{chart}");
        assert!(chart.contains("role=\"img\" aria-label=\"") && chart.contains("<title>"));
        assert!(chart.contains("\"var(--"), "{chart}");
        assert!(!chart.contains("=\"#") && !chart.contains("font-family"), "{chart}");
    }
}

#[test]
fn the_numbers_are_those_of_the_input() {
    let page = page(&crew());
    assert!(page.contains("72.5\u{a0}kg"), "no line begins with a unit");
    let page = page.replace(NO_BREAK, " ");
    for shown in [
        // The board.
        ">6 of 6<",
        ">1 of 6<",
        ">0 of 6<",
        "data-label=\"Session load, last 7 days\">895<",
        "data-label=\"Session load, last 7 days\">568<",
        "<time datetime=\"2026-11-20\">Fri 20 Nov</time>",
        // The proposals.
        "50 / 60 / 70 / 80 kg",
        "55 / 65 / 75 / 85 lb",
        "open set 9 for 5: 5 lb more",
        "<strong>refused</strong>",
        "to answer",
        "<bdi>Squat</bdi>, 8-6-5-5 or more",
        "after <time datetime=\"2026-11-17\">Tue 17 Nov</time>",
        // Sessions, each in its member's unit.
        "1203.75 kg",
        "4120 lb",
        ">372<",
        ">568<",
        "Not rated: 1 of 6 sessions.",
        // What the charts say.
        "3 Nov 72.5 kg, 10 Nov 76.25 kg with a set missed, 17 Nov 80 kg.",
        "Reps in the open set: 3 Nov 7 of 5, 10 Nov 4 of 5, 17 Nov 9 of 5.",
        "17 Nov 185 lb.",
        "2 Nov 757, 9 Nov 434, 16 Nov 895.",
        "3 Nov before 9.4 cm and after 10.3 cm",
        "17 Nov before 11.5 cm.",
        "17 Nov before -3.2 cm and after -5.1 cm.",
        "first reading ± 1.9 cm",
        "First to last before the hold: +2.1 cm, more than measurement error (1.9 cm).",
        "A smaller reading means more range.",
        "first reading ± 4.5 cm",
        "2 Nov 15 min 12 s",
        "2 Nov 7 min 51 s",
        // What stands beside them.
        "<bdi>Row lying on the bench</bdi> instead of <bdi>Bent-over row</bdi> (low back)",
        "<b>Open</b> <span><time datetime=\"2026-11-17\">Tue 17 Nov</time>: low back 4/10",
        "<b>Cleared</b> <span><time datetime=\"2026-11-10\">Tue 10 Nov</time>: low back 2/10",
        "2 uploads from Żółwia Ōkami&#39;s device have not arrived: 4, 5",
    ] {
        assert!(page.contains(shown), "{shown}");
    }
    for protocol in Protocol::ALL {
        let error = reading(protocol.mdc95_tenths(), protocol.unit().text());
        assert!(page.contains(&format!(": {error} (")));
    }
    for caution in care::always() {
        assert!(page.contains(&caution.replace('\'', "&#39;")), "{caution}");
    }
}

#[test]
fn parts_come_in_their_order_and_pain_has_a_word() {
    let page = page(&crew());
    let order =
        ["<h1>", ">Files to check<", ">Board<", "<b>pain</b>", "<b>progress</b>", ">Proposals<"];
    let members = ["id=\"member-1\"", "id=\"member-2\"", "id=\"member-3\"", ">Cautions<"];
    let mut rest = page.as_str();
    for part in order.into_iter().chain(members) {
        rest = rest.split_once(part).map(|(_, rest)| rest).ok_or(part).unwrap();
    }
}

#[test]
fn what_is_not_there_leaves_no_box() {
    let nobody = [empty(3, "Íñigo", MassUnit::Kg)];
    let mut bare = board(&nobody);
    bare.arrivals.clear();
    let page = html(&bare, &nobody).unwrap();
    assert!(page.contains("Nothing logged yet.") && page.contains("No proposals to answer."));
    for absent in ["<svg", "<figure", ">Files to check<", "<h3>"] {
        assert!(!page.contains(absent), "{absent}");
    }
    bare.rows.clear();
    assert!(html(&bare, &[]).unwrap().contains("Nobody is on the board yet."));
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    assert_eq!(page(&crew()), page(&crew()));
}

#[test]
fn odd_data_draws_all_the_same() {
    let mut member = empty(7, "Old Tom", MassUnit::Kg);
    let mut lift = sample::busy().lifts.remove(0);
    // Twice on a day, out of order, a load of nothing, very heavy, and years apart.
    lift.points = vec![
        point(date(11, 10), Some(Mass::ZERO), 0, false),
        point(date(11, 10), Some(kg(2_000_000)), 400, true),
        point(date(1, 3), None, 3, true),
    ];
    member.lifts = vec![lift];
    let read = |month, before, after| RangePoint { date: date(month, 1), before, after };
    let points = vec![read(1, None, Some(-400)), read(9, None, None), read(12, Some(800), None)];
    member.ranges = vec![range(Protocol::SitAndReach, "sit and reach", points)];
    member.sessions = vec![session(date(1, 3), "", Mass::ZERO, None)];
    let page = page(&[member]);
    assert_eq!(charts(&page).len(), 2);
    for chart in charts(&page) {
        elements(chart);
        assert!(!chart.contains("NaN") && !chart.contains("inf"), "{chart}");
    }
}

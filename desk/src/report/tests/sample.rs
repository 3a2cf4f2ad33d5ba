//! A board and members made by hand: invented people of a rowing club's boathouse cellar.

use chrono::{Days, NaiveDate};
use holdfast_core::coach::{
    Attention, AttentionKind, BoardRow, BoardScreen, DiscomfortLine, LiftPoint, LiftSeries,
    MemberScreen, OptionLine, Proposal, ProposedSet, RangePoint, RangeSeries, RegionMinutes,
    SessionLine, WeekLine,
};
use holdfast_core::load::Decision;
use holdfast_core::load::Reason;
use holdfast_core::plan::{Exercise, Protocol};
use holdfast_core::{Mass, MassUnit, PersonId, RecordId};

pub(super) const HOSTILE: &str = "<script>alert('x')</script>\"& Søn";

pub(super) fn date(month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, month, day).unwrap()
}

pub(super) fn kg(thousandths: i64) -> Mass {
    Mass::thousandths(thousandths, MassUnit::Kg)
}

fn id(number: u32) -> String {
    format!("00000000-0000-4000-8000-{number:012}")
}

fn person(number: u32) -> PersonId {
    PersonId::parse(&id(number)).unwrap()
}

fn record(number: u32) -> RecordId {
    RecordId::parse(&id(number)).unwrap()
}

pub(super) fn look(kind: AttentionKind, text: &str) -> Attention {
    let word = format!("{kind:?}").to_lowercase();
    Attention { kind, word, text: text.to_owned() }
}

pub(super) fn session(
    date: NaiveDate,
    day: &str,
    volume: Mass,
    rated: Option<(u32, u32)>,
) -> SessionLine {
    SessionLine {
        session: record(0),
        date,
        day: day.to_owned(),
        sets: 4,
        volume,
        rpe: rated.map(|(rpe, _)| rpe),
        minutes: rated.map(|(_, minutes)| minutes),
        load: rated.map(|(rpe, minutes)| rpe * minutes),
    }
}

pub(super) fn point(date: NaiveDate, load: Option<Mass>, reps: u32, made: bool) -> LiftPoint {
    let (heaviest_reps, last_reps) = (reps, Some(reps));
    LiftPoint { date, heaviest: load, heaviest_reps, last_reps, asked: 5, made }
}

pub(super) fn empty(number: u32, name: &str, unit: MassUnit) -> MemberScreen {
    MemberScreen {
        person: person(number),
        name: name.to_owned(),
        unit,
        attention: Vec::new(),
        proposals: Vec::new(),
        sessions: Vec::new(),
        weeks: Vec::new(),
        load_text: None,
        lifts: Vec::new(),
        strengths: Vec::new(),
        maxes: Vec::new(),
        ranges: Vec::new(),
        regions: Vec::new(),
        options: Vec::new(),
        notes: Vec::new(),
        discomfort: Vec::new(),
    }
}

fn empty_week() -> WeekLine {
    WeekLine {
        week_of: date(11, 2),
        sessions: 0,
        load: 0,
        volume: Mass::ZERO,
        unrated_days: 0,
        monotony: None,
        strain: None,
    }
}

pub(super) fn range(protocol: Protocol, name: &str, points: Vec<RangePoint>) -> RangeSeries {
    RangeSeries {
        protocol,
        name: name.to_owned(),
        unit: protocol.unit().text().to_owned(),
        piece: "Calves".into(),
        side: Some(1),
        side_name: Some("left".into()),
        mdc95_tenths: protocol.mdc95_tenths(),
        points,
        judged: None,
        trend: None,
    }
}

fn proposal(unit: MassUnit, movement: &str, ruled: Option<Decision>) -> Proposal {
    let load = |count| Mass::thousandths(count * 1000, unit);
    let set = |(index, load_now): (usize, i64)| ProposedSet {
        set: index as u32 + 1,
        last: Some(load(load_now)),
        reps: Some(5),
        next: Some(load(load_now + 5)),
        asked: 5,
        open: false,
        most: None,
        reason: Reason::Free,
        from: vec![],
    };
    let text = |more: i64| {
        let loads = [50, 60, 70, 80].map(|found| (found + more).to_string());
        format!("{} {}", loads.join(" / "), unit.symbol())
    };
    Proposal {
        exercise: Exercise::of("back-squat"),
        movement: movement.into(),
        called: movement.into(),
        bar: Some("long bar".into()),
        piece: "Squat".into(),
        scheme: "8,6,5,5 open".into(),
        track: "Squat".into(),
        others: None,
        held: ruled.map(|_| "The answer stands: 55 lb.".into()),
        after: record(90),
        on: date(11, 17),
        sets: [50, 60, 70, 80].into_iter().enumerate().map(set).collect(),
        last_text: text(0),
        next_text: text(5),
        why: format!("80 {0} on Tue 17 Nov, open set 9 for 5: 5 {0} more", unit.symbol()),
        ruled,
        ruled_text: ruled.map(|decision| match decision {
            Decision::Accept => "accepted".into(),
            Decision::Change => "changed".into(),
            Decision::Refuse => "refused".into(),
        }),
    }
}

/// A member with a few weeks of everything, in kilograms.
pub(super) fn busy() -> MemberScreen {
    let tuesdays = || [date(11, 3), date(11, 10), date(11, 17)];
    let fridays = [date(11, 6), date(11, 13), date(11, 20)];
    let mut member = empty(1, HOSTILE, MassUnit::Kg);
    member.attention = vec![
        look(AttentionKind::Pain, "low back 4/10 in Back squat on Tue 17 Nov"),
        look(AttentionKind::Options, "Row lying on the bench (low back), 2 sessions"),
        look(AttentionKind::Rushed, "5 of 12 windows with less to spare than planned"),
        look(AttentionKind::Progress, "Back squat, last set 72.5 kg to 80 kg"),
    ];
    member.proposals = vec![proposal(MassUnit::Kg, "Back squat", None)];
    for (index, (tuesday, friday)) in tuesdays().into_iter().zip(fridays).enumerate() {
        let more = index as u32;
        member.sessions.extend([
            session(tuesday, "Squat evening", kg(1_727_500), Some((6 + more, 62))),
            session(friday, "Row evening", kg(1_203_750), (index != 1).then_some((7, 55 + more))),
        ]);
    }
    let week = |(index, tuesday): (usize, NaiveDate)| WeekLine {
        week_of: tuesday - Days::new(1),
        sessions: 2,
        load: [757, 434, 895][index],
        volume: kg(2_931_250),
        ..empty_week()
    };
    member.weeks = tuesdays().into_iter().enumerate().map(week).collect();
    let loads = [72_500, 76_250, 80_000].map(|load| Some(kg(load)));
    let done = [(7, true), (4, false), (9, true)];
    let squat = tuesdays().into_iter().zip(loads).zip(done);
    member.lifts = vec![
        LiftSeries {
            exercise: Exercise::of("back-squat"),
            movement: "Back squat".into(),
            scheme: "8,6,5,5 open".into(),
            open: true,
            points: squat.map(|((on, load), (reps, made))| point(on, load, reps, made)).collect(),
        },
        LiftSeries {
            exercise: Exercise::of("press-up"),
            movement: "Press-up".into(),
            scheme: "10,10".into(),
            open: false,
            points: vec![point(date(11, 3), None, 10, true)],
        },
    ];
    let read = |(on, before, after)| RangePoint { date: on, before, after };
    member.ranges = vec![range(
        Protocol::KneeToWall,
        "knee to wall",
        [
            (date(11, 3), Some(94), Some(103)),
            (date(11, 10), Some(101), Some(99)),
            (date(11, 17), Some(115), None),
        ]
        .map(read)
        .to_vec(),
    )];
    member.ranges[0].judged = Some("+2.1 cm, more than measurement error (1.9 cm)".into());
    for monday in [date(11, 2), date(11, 9), date(11, 16)] {
        for (region, seconds) in [("hip flexors", 912), ("calves", 471)] {
            member.regions.push(RegionMinutes {
                week_of: monday,
                region: region.into(),
                seconds,
                held_text: String::new(),
                dose_text: None,
            });
        }
    }
    member.options = vec![OptionLine {
        date: date(11, 13),
        movement: "Bent-over row".into(),
        option: "Row lying on the bench".into(),
        because: "low back".into(),
    }];
    let flag = |number, on, severity, open| DiscomfortLine {
        flag: record(number),
        date: on,
        movement: Some("Back squat".into()),
        place: "low back".into(),
        severity,
        signs: Vec::new(),
        text: format!("low back {severity}/10 in Back squat"),
        open,
    };
    member.discomfort = vec![flag(91, date(11, 10), 2, false), flag(92, date(11, 17), 4, true)];
    member
}

/// A member who reads pounds, with a single session.
pub(super) fn pounds() -> MemberScreen {
    let mut member = empty(2, "Żółwia Ōkami", MassUnit::Lb);
    member.attention = vec![look(AttentionKind::Stall, "Back squat: missed twice in a row")];
    member.proposals = vec![proposal(MassUnit::Lb, "Back squat", Some(Decision::Refuse))];
    member.sessions = vec![session(date(11, 17), "Squat evening", Mass::lb(4120), Some((8, 71)))];
    member.weeks = vec![WeekLine {
        week_of: date(11, 16),
        sessions: 1,
        load: 568,
        volume: Mass::lb(4120),
        ..empty_week()
    }];
    member.lifts = vec![LiftSeries {
        exercise: Exercise::of("back-squat"),
        movement: "Back squat".into(),
        scheme: "8,6,5,5 open".into(),
        open: true,
        points: vec![point(date(11, 17), Some(Mass::lb(185)), 6, true)],
    }];
    member.ranges = vec![range(
        Protocol::FingertipToFloor,
        "fingertip to floor",
        vec![RangePoint { date: date(11, 17), before: Some(-32), after: Some(-51) }],
    )];
    member
}

/// The board over some members.
pub(super) fn board(members: &[MemberScreen]) -> BoardScreen {
    let row = |member: &MemberScreen| BoardRow {
        person: member.person,
        name: member.name.clone(),
        trained: member.sessions.len() as u32,
        planned: 6,
        last: member.sessions.iter().map(|session| session.date).max(),
        week_load: member.weeks.last().map_or(0, |week| week.load),
        attention: member.attention.clone(),
        proposals: member.proposals.clone(),
    };
    BoardScreen {
        block: Some("Cellar block one".into()),
        date: date(11, 21),
        heading: "Cellar block one, week 3 of 3".into(),
        rows: members.iter().map(row).collect(),
        arrivals: vec!["2 uploads from Żółwia Ōkami's device have not arrived: 4, 5".into()],
    }
}

/// Three members: one with everything, one in pounds, one with nothing.
pub(super) fn crew() -> Vec<MemberScreen> {
    vec![busy(), pounds(), empty(3, "Íñigo", MassUnit::Kg)]
}

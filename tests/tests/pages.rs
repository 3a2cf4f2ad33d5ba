//! Pages: what stands on them, in both languages, and that whatever can be touched leads somewhere.

use std::collections::VecDeque;

use catalogue::speaking;
use holdfast_core::care::Place;
use holdfast_core::exchange::web::ServerKind;
use holdfast_core::exchange::{ExchangeDid, ExchangeStep, FailedFile};
use holdfast_core::journal::Role;
use holdfast_core::page::{PageAct, PageAsk, PageRow, PageScreen, PhoneChoices, StartAnswers};
use holdfast_core::session::Tap;
use holdfast_core::{Language, MassUnit, PairDid, RecoveryDid, first_run};
use holdfast_tests::train::squats;
use holdfast_tests::{Crew, Device, SMALL_PLAN, changed};

fn trained() -> Crew {
    let crew =
        Crew::start(&changed(SMALL_PLAN, "weeks = 2", "weeks = 8"), &["Ines", "Ana"]).unwrap();
    for (date, kg) in
        [("2026-11-03", 50), ("2026-11-10", 55), ("2026-11-17", 60), ("2026-11-24", 65)]
    {
        squats(&crew.athletes[0], date, &[(kg - 10, 8), (kg - 5, 6), (kg, 6)]);
    }
    crew.exchange_all().unwrap();
    crew.coach.go_to("2026-11-24");
    crew
}

fn page(device: &Device, ask: PageAsk) -> PageScreen {
    device.holdfast.page(ask, device.now()).unwrap()
}

fn this_phone() -> PageAsk {
    PageAsk::ThisPhone { choices: PhoneChoices::default() }
}

fn exchange_page(device: &Device) -> PageScreen {
    page(device, PageAsk::Exchange { carriers: vec!["Boathouse crew".into()] })
}

/// Everything that can be touched on a page.
fn acts(page: &PageScreen) -> Vec<PageAct> {
    let rows = page.choices.iter().chain(&page.rows).filter_map(|row| row.does.clone());
    let keys = page.beside_key.iter().chain(&page.key).filter_map(|key| key.does.clone());
    rows.chain(keys).collect()
}

/// From home every page that a touch leads to is drawn, says what it is, and leaves a way on.
#[test]
fn whatever_opens_a_page_opens_one() {
    let crew = trained();
    let homes = [
        (&crew.athletes[0], vec![PageAsk::History { member: None }, this_phone()], 9),
        (&crew.athletes[1], vec![PageAsk::History { member: None }, this_phone()], 8),
        (&crew.coach, vec![PageAsk::Board, PageAsk::Plan, this_phone()], 12),
    ];
    for (device, home, least) in homes {
        for language in Language::ALL {
            let seen = speaking(language, || {
                let mut to_do: VecDeque<PageAsk> = home.clone().into();
                to_do.push_back(PageAsk::Exchange { carriers: vec!["club".into()] });
                let mut seen: Vec<PageAsk> = Vec::new();
                while let Some(ask) = to_do.pop_front() {
                    if seen.contains(&ask) {
                        continue;
                    }
                    let drawn = page(device, ask.clone());
                    assert!(!drawn.title.is_empty(), "{ask:?}");
                    let says = drawn.said.len() + drawn.rows.len() + drawn.fields.len();
                    assert!(says > 0 || drawn.block.is_some(), "{ask:?} is empty");
                    to_do.extend(acts(&drawn).into_iter().filter_map(|act| match act {
                        PageAct::Open { page } => Some(page),
                        _ => None,
                    }));
                    seen.push(ask);
                }
                seen
            });
            assert!(seen.len() >= least, "{}: {seen:?}", seen.len());
        }
    }
}

#[test]
fn somebody_starts_in_three_steps() {
    let first = first_run(StartAnswers::default());
    assert!(first.key.as_ref().unwrap().does.is_none(), "nobody is an athlete by chance");
    let Some(PageAct::Answer { answers }) = first.rows[0].does.clone() else { panic!() };
    assert_eq!(answers.role, Some(Role::Athlete));
    let chosen = first_run(answers);
    assert_eq!(chosen.rows[0].chosen, Some(true));
    let Some(PageAct::Answer { answers }) = chosen.key.unwrap().does else { panic!() };
    let nameless = first_run(StartAnswers { name: "  ".into(), ..answers.clone() });
    assert!(nameless.block.unwrap().heading.contains("name"), "asked again");
    assert_eq!(nameless.title, first.title);
    let how = first_run(StartAnswers { name: "Ines".into(), ..answers });
    assert!(how.key.as_ref().unwrap().does.is_none(), "loads are read in one unit or the other");
    let Some(PageAct::Answer { answers }) = how.rows[1].does.clone() else { panic!() };
    assert_eq!(answers.unit, Some(MassUnit::Lb));
    let german = StartAnswers { language: Some(Language::De), ..answers };
    assert_eq!(first_run(german.clone()).title, "Gewichte und Sprache");
    let Some(PageAct::Answer { answers }) = first_run(german).key.unwrap().does else { panic!() };
    let last = first_run(answers);
    assert_eq!(last.title, "Bevor du anfängst");
    assert!(last.said.iter().any(|said| said.contains("Gesundheit")));
    assert!(last.said.iter().any(|said| said.contains("ärztlich") || said.contains("Arzt")));
    let key = last.key.unwrap();
    let Some(PageAct::Begin { answers }) = key.does else { panic!() };
    assert!(
        key.saves
            && key.read_first
            && answers.name == "Ines"
            && answers.role == Some(Role::Athlete)
    );
}

/// The page of a movement has the numbers of the member's page, and draws each of them where it is.
#[test]
fn a_movements_page_shows_what_was_lifted() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let history = page(ines, PageAsk::History { member: None });
    let squat = history.rows.iter().find(|row| row.title == "Back squat").unwrap();
    assert_eq!(squat.value.as_deref(), Some("65 kg × 6"));
    let Some(PageAct::Open { page: ask }) = squat.does.clone() else { panic!() };
    let shown = page(ines, ask.clone());
    let member = ines.holdfast.member("Ines".into(), ines.now().date()).unwrap();
    let strength = &member.strengths[0];
    let likely = strength.points.last().unwrap().likely;
    let number = shown.number.as_ref().unwrap();
    assert_eq!(number.number, format!("{:.0}", likely.for_drawing(MassUnit::Kg)));
    assert_eq!(shown.rows.len(), 4, "a row a session");
    let chart = shown.chart.as_ref().unwrap();
    assert_eq!(chart.points.len(), strength.points.len());
    assert!(chart.said.contains("Back squat") && chart.said.contains(&chart.last));
    // The coach sees the same of her; another athlete does not.
    let Some(PageAct::Open { page: of_ines }) = page(&crew.coach, PageAsk::Board)
        .rows
        .into_iter()
        .find_map(|row| (row.title == "Ines").then_some(row.does)?)
    else {
        panic!()
    };
    let seen = page(&crew.coach, of_ines.clone());
    assert!(seen.rows.iter().any(|row| row.title == "Back squat"), "{seen:?}");
    let refused = crew.athletes[1].holdfast.page(of_ines, crew.athletes[1].now());
    assert!(refused.is_err());
    let pounds = ines.holdfast.choose_unit(MassUnit::Lb, ines.now()).unwrap();
    assert_eq!(pounds.unit, MassUnit::Lb);
    assert_eq!(page(ines, ask).number.unwrap().unit, "lb");
}

/// What waits is what no exchange has brought: one that could not write has brought nothing.
#[test]
fn what_waits_is_counted_until_it_is_brought() {
    let crew = trained();
    let ines = &crew.athletes[0];
    assert_eq!(exchange_page(ines).block.unwrap().heading, "All is sent");
    squats(ines, "2026-11-25", &[(40, 8), (50, 8), (60, 8)]);
    let waits = exchange_page(ines).block.unwrap().heading;
    assert!(waits.ends_with("entries are waiting"), "{waits}");
    // The carrier is full.
    let mut did = ExchangeDid::Begin;
    while let Ok(step) = ines.holdfast.exchange(did, ines.now()) {
        did = match step {
            ExchangeStep::ListFiles => ExchangeDid::Listed { files: crew.carrier.listing() },
            ExchangeStep::Get { .. } => ExchangeDid::Got { files: Vec::new(), unread: Vec::new() },
            ExchangeStep::Put { files } => {
                let failed = |name| FailedFile { name, reason: "There is no space.".into() };
                let unwritten = files.into_iter().map(|file| failed(file.name)).collect();
                ExchangeDid::Put { written: 0, unwritten }
            }
            ExchangeStep::Done { .. } => panic!("nothing was brought"),
        };
    }
    assert_eq!(exchange_page(ines).block.unwrap().heading, waits);
    // After a week it is said since when: somebody may think that it goes out by itself.
    ines.go_to("2026-12-01");
    assert_eq!(exchange_page(ines).block.unwrap().heading, waits);
    ines.go_to("2026-12-02");
    let since = format!("{} since Tue 24 Nov", waits.replace(" are", ""));
    assert_eq!(exchange_page(ines).block.unwrap().heading, since);
    ines.exchange(&crew.carrier).unwrap();
    let shown = exchange_page(ines);
    assert_eq!(shown.block.unwrap().heading, "All is sent");
    let last = shown.rows[0].text.clone().unwrap();
    assert!(last.starts_with("today, "), "{last}");
}

/// One entry, outside any session.
fn between() -> Tap {
    let (place, signs) = (Place::Knee, Vec::new());
    Tap::FlagBetween { movement: None, place, severity: 2, signs, on: None }
}

fn waits(device: &Device) -> String {
    exchange_page(device).block.unwrap().heading
}

/// What is logged while an exchange is bringing the rest waits for the next, whether it is cut by then or not.
#[test]
fn what_is_logged_meanwhile_waits_for_the_next_exchange() {
    for cut in [false, true] {
        let crew = trained();
        let ines = &crew.athletes[0];
        squats(ines, "2026-11-25", &[(40, 8)]);
        let mut did = ExchangeDid::Begin;
        let mut put = 0;
        loop {
            did = match ines.holdfast.exchange(did, ines.now()).unwrap() {
                ExchangeStep::ListFiles => ExchangeDid::Listed { files: crew.carrier.listing() },
                ExchangeStep::Get { .. } => {
                    ExchangeDid::Got { files: Vec::new(), unread: Vec::new() }
                }
                ExchangeStep::Put { files } => {
                    put += files.len();
                    for file in &files {
                        std::fs::write(crew.carrier.folder().join(&file.name), &file.content)
                            .unwrap();
                    }
                    ines.tap(between()).unwrap();
                    if cut {
                        ines.holdfast.cut_leaves().unwrap();
                    }
                    ExchangeDid::Put { written: files.len() as u32, unwritten: Vec::new() }
                }
                ExchangeStep::Done { .. } => break,
            };
        }
        assert!(put > 0);
        assert_eq!(waits(ines), "1 entry is waiting", "cut: {cut}");
        ines.exchange(&crew.carrier).unwrap();
        assert_eq!(waits(ines), "All is sent");
    }
}

/// A carrier that takes one file of several: what it did not take is named, and all of it goes on waiting.
#[test]
fn what_is_brought_in_part_goes_on_waiting() {
    let crew = trained();
    crew.coach.publish(&changed(SMALL_PLAN, "Small block", "Second block")).unwrap();
    let mut did = ExchangeDid::Begin;
    let report = loop {
        did = match crew.coach.holdfast.exchange(did, crew.coach.now()).unwrap() {
            ExchangeStep::ListFiles => ExchangeDid::Listed { files: crew.carrier.listing() },
            ExchangeStep::Get { .. } => ExchangeDid::Got { files: Vec::new(), unread: Vec::new() },
            ExchangeStep::Put { files } => {
                assert!(files.len() > 1);
                let failed = |name: &String| FailedFile {
                    name: name.clone(),
                    reason: "There is no space.".into(),
                };
                let unwritten = files[1..].iter().map(|file| failed(&file.name)).collect();
                ExchangeDid::Put { written: 1, unwritten }
            }
            ExchangeStep::Done { report } => break report,
        };
    };
    assert!(!report.aside.is_empty());
    let shown = exchange_page(&crew.coach);
    assert!(shown.block.unwrap().heading.contains("waiting"));
    let told = |row: &PageRow| row.text.as_deref().is_some_and(|text| text.contains("no space"));
    assert!(shown.rows.iter().any(told), "{:?}", shown.rows);
    crew.coach.exchange(&crew.carrier).unwrap();
    assert_eq!(waits(&crew.coach), "All is sent");
}

/// What is not shared waits for nothing; once it is, it does.
#[test]
fn what_is_withheld_does_not_wait() {
    let crew = trained();
    let eva = Device::start(crew.folder().join("eva"), "Eva", Role::Athlete, 90).unwrap();
    eva.go_to("2026-11-20");
    eva.tap(between()).unwrap();
    eva.go_to("2026-11-24");
    assert_eq!(waits(&eva), "No crew yet");
    compared(&crew.coach, &eva);
    eva.pair(PairDid::Match { matches: true, share_earlier: false }).unwrap();
    crew.coach.exchange(&crew.carrier).unwrap();
    eva.exchange(&crew.carrier).unwrap();
    assert_eq!(waits(&eva), "All is sent", "the flag stays with her");
    eva.pair(PairDid::ShareEarlier).unwrap();
    assert_eq!(waits(&eva), "1 entry is waiting");
    eva.exchange(&crew.carrier).unwrap();
    assert_eq!(waits(&eva), "All is sent");
}

/// The form of a server asks for what its kind needs, hides what is secret, and keeps the address when the kind is another.
#[test]
fn a_server_is_of_one_kind_or_the_other() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let opened = exchange_page(ines).rows.into_iter().find_map(|row| match row.does {
        Some(PageAct::Open { page: page @ PageAsk::Server { .. } }) => Some(page),
        _ => None,
    });
    let form = |kind| page(ines, PageAsk::Server { kind, address: "https://nas/".into() });
    let first = page(ines, opened.unwrap());
    assert_eq!(first.fields.len(), 3, "most have WebDAV");
    for (kind, chosen, labels) in [
        (ServerKind::WebDav, "WebDAV", vec!["Address", "User name", "Password"]),
        (
            ServerKind::S3,
            "S3-compatible storage",
            vec![
                "Address",
                "Bucket",
                "Region",
                "Folder in the bucket, if you want one",
                "Key id",
                "Secret key",
            ],
        ),
    ] {
        let page = form(kind);
        let is_chosen = |row: &&PageRow| row.chosen == Some(true);
        let titles: Vec<_> = page.choices.iter().filter(is_chosen).map(|row| &row.title).collect();
        assert_eq!(titles, [chosen]);
        // It waits until all that signs in is typed; where nobody names a region or a folder there is none.
        assert!(page.key.as_ref().unwrap().typed_first.is_some());
        let may_be_empty = page.fields.iter().filter(|field| field.optional).count();
        assert_eq!(may_be_empty, if kind == ServerKind::S3 { 2 } else { 0 });
        let said: Vec<_> = page.fields.iter().map(|field| field.label.as_str()).collect();
        assert_eq!(said, labels);
        assert_eq!(page.fields[0].text, "https://nas/");
        let secret: Vec<_> = page.fields.iter().map(|field| field.secret).collect();
        let last_alone = (1..=labels.len()).map(|at| at == labels.len()).collect::<Vec<_>>();
        assert_eq!(secret, last_alone, "only the last is nobody's to read");
        assert_eq!(page.key.unwrap().does, Some(PageAct::KeepServer { kind }));
        let leads = page.choices.iter().map(|row| row.does.clone().unwrap());
        let kinds = [ServerKind::WebDav, ServerKind::S3];
        assert!(leads.eq(kinds.map(|kind| PageAct::ServerKind { kind })));
    }
    let s3 = form(ServerKind::S3);
    assert_eq!(s3.fields[2].text, "us-east-1");
    assert!(s3.said[0].contains("names a region, leave it as it is"), "{:?}", s3.said);
    let german = speaking(Language::De, || form(ServerKind::S3));
    assert_eq!(german.choices[1].title, "S3-kompatibler Speicher");
    assert_eq!(german.fields[5].label, "Geheimer Schlüssel");
}

/// A code as a camera of another library reads it.
fn scanned(page: &PageScreen) -> String {
    let code = page.code.as_ref().unwrap();
    let (side, quiet, pixels) = (code.side as usize, 4, 4);
    let wide = (side + 2 * quiet) * pixels;
    let mut image = rqrr::PreparedImage::prepare_from_greyscale(wide, wide, |x, y| {
        let (x, y) = ((x / pixels).wrapping_sub(quiet), (y / pixels).wrapping_sub(quiet));
        if x < side && y < side && code.dark[y * side + x] { 0 } else { 255 }
    });
    let grids = image.detect_grids();
    let (_, text) = grids[0].decode().unwrap();
    assert_eq!(text, code.text);
    text
}

/// Both sides up to where the member compares, by touching what the pages show and scanning each other's codes.
fn compared(coach: &Device, member: &Device) -> PageScreen {
    let chance = |seed: u8| vec![seed; 32];
    let coachs = |did| coach.holdfast.pair_page(did, coach.now()).unwrap();
    let members = |did| member.holdfast.pair_page(did, member.now()).unwrap();
    assert!(acts(&page(coach, PageAsk::Pairing)).contains(&PageAct::Invite));
    let invited = coachs(PairDid::Invite { chance: chance(1) });
    let answered = members(PairDid::Scan { text: scanned(&invited), chance: chance(2) });
    let opened = coachs(PairDid::Scan { text: scanned(&answered), chance: chance(3) });
    assert_eq!(opened.title, "Let Eva in");
    let compared = members(PairDid::Scan { text: scanned(&opened), chance: chance(4) });
    assert_eq!(compared.words.len(), 4);
    let line = compared.words.join(" ");
    let touched = opened.rows.iter().find(|row| row.title == line).unwrap();
    let Some(PageAct::Pick { line }) = touched.does else { panic!() };
    coachs(PairDid::Pick { line, label: None });
    compared
}

#[test]
fn two_phones_pair_by_their_pages() {
    let crew = trained();
    let eva = Device::start(crew.folder().join("eva"), "Eva", Role::Athlete, 90).unwrap();
    let key = compared(&crew.coach, &eva).key.unwrap();
    assert!(key.saves && key.read_first, "it cannot be undone");
    let Some(PageAct::Match { matches, share_earlier }) = key.does else { panic!() };
    let did = PairDid::Match { matches, share_earlier };
    let done = eva.holdfast.pair_page(did, eva.now()).unwrap();
    assert!(matches!(
        done.key.unwrap().does,
        Some(PageAct::Open { page: PageAsk::Exchange { .. } })
    ));
    crew.coach.exchange(&crew.carrier).unwrap();
    eva.exchange(&crew.carrier).unwrap();
    assert!(page(&crew.coach, PageAsk::Crew).rows.iter().any(|row| row.title == "Eva"));
}

#[test]
fn the_recovery_code_is_written_down_on_its_page() {
    let crew = trained();
    let ines = &crew.athletes[0];
    let code_row = |shown: &PageScreen| {
        shown.rows.iter().find(|row| row.title == "Recovery code").unwrap().text.clone()
    };
    assert!(code_row(&page(ines, this_phone())).is_some(), "it is on the phone alone");
    let hidden = page(ines, PageAsk::Recovery { shown: false });
    assert!(hidden.block.is_none(), "not before it is asked for");
    let Some(PageAct::Open { page: shows }) = hidden.key.unwrap().does else { panic!() };
    let shown = page(ines, shows);
    let code = shown.block.unwrap().heading;
    let groups: Vec<&str> = code.split(['-', '\n']).collect();
    let asked = ines.holdfast.recovery(RecoveryDid::Look, ines.now()).unwrap().groups;
    let typed: Vec<&str> = asked.iter().map(|group| groups[*group as usize - 1]).collect();
    let did = RecoveryDid::Confirm { groups: typed.join(" ") };
    let done = ines.holdfast.recovery_page(did, ines.now()).unwrap();
    assert!(done.key.is_none() && done.said[0].contains("on paper"), "{done:?}");
    assert!(code_row(&page(ines, this_phone())).is_none());
}

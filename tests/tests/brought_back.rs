//! The pages of somebody whose log comes back with their recovery code, before there is a device.

use catalogue::speaking;
use holdfast_core::exchange::web::ServerKind;
use holdfast_core::page::{PageAct, PageAsk, PageKey, PageScreen, RestoreAnswers, StartAnswers};
use holdfast_core::{Language, first_run, restore_page, server_page};

fn looks(code: &str, carriers: &[&str]) -> PageScreen {
    let carriers = carriers.iter().map(|&place| place.to_owned()).collect();
    restore_page(RestoreAnswers { code: code.into(), carriers, found: None })
}

fn finds(text: &str) -> PageScreen {
    restore_page(RestoreAnswers { found: Some(text.into()), ..RestoreAnswers::default() })
}

fn key(page: &PageScreen) -> &PageKey {
    page.key.as_ref().unwrap()
}

/// Whoever starts may say so on the first page, below who they are, and nothing of it is chosen.
#[test]
fn the_first_page_leads_there() {
    for (language, title) in [
        (Language::En, "I have a recovery code"),
        (Language::De, "Ich habe einen Wiederherstellungscode"),
    ] {
        let answers = StartAnswers { language: Some(language), ..StartAnswers::default() };
        let row = first_run(answers).rows.pop().unwrap();
        assert_eq!(row.title, title);
        assert_eq!(row.does, Some(PageAct::BringBack));
        assert_eq!(row.chosen, None, "it is no answer to who somebody is");
    }
}

/// The key waits for a carrier, then for the code; what was typed stands there again.
#[test]
fn a_code_and_a_carrier_are_asked_for_first() {
    let neither = looks("", &[]);
    assert!(key(&neither).does.is_none(), "there is nowhere to look");
    let both = looks("7K3M", &["Boathouse crew", "https://nas.example.org/"]);
    assert_eq!(both.fields[0].text, "7K3M");
    assert!(!both.fields[0].optional && !both.fields[0].secret, "a slip is seen");
    assert_eq!(key(&both).does, Some(PageAct::Search));
    assert!(key(&both).typed_first.is_some(), "not without a code");
    assert!(!key(&both).saves, "a search writes nothing");
    let titles: Vec<&str> = both.rows.iter().map(|row| row.title.as_str()).collect();
    assert_eq!(titles[..2], ["Boathouse crew", "https://nas.example.org/"]);
    let adds: Vec<PageAct> = neither.rows.into_iter().filter_map(|row| row.does).collect();
    let [PageAct::KeepFolder, PageAct::Open { page: PageAsk::Server { kind, address } }] =
        &adds[..]
    else {
        panic!("{adds:?}")
    };
    let form = server_page(*kind, address.clone());
    assert_eq!(key(&form).does, Some(PageAct::KeepServer { kind: ServerKind::WebDav }));
}

/// What was found stands first; what is stored and the cautions are read before anything is written.
#[test]
fn what_was_found_is_agreed_to_once_it_was_read() {
    for language in Language::ALL {
        let (start, found) = speaking(language, || {
            let answers = StartAnswers { step: 2, ..StartAnswers::default() };
            (first_run(answers), finds("Found Ines's log, written on one device."))
        });
        assert_eq!(found.said[0], "Found Ines's log, written on one device.");
        assert_eq!(found.said[1..], start.said, "as for anybody who starts");
        assert!(key(&found).saves && key(&found).read_first, "{:?}", found.key);
        assert_eq!(key(&found).does, Some(PageAct::Restore));
    }
}

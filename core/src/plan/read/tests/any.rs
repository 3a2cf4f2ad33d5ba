//! Whatever the bytes are: never a panic, and either a block or a problem inside the text.

use proptest::prelude::*;

use crate::plan::Problem;
use crate::plan::read::{Reviewed, read_kit, read_plan, review_plan};

const DEMO: &[u8] = include_bytes!("../../../../../desk/demo/plan.toml");
const EVERY_KIND: &[u8] = include_bytes!("../../../../../bindings/fixtures/every-kind.toml");

/// Something done to a text.
#[derive(Clone, Debug)]
enum Edit {
    Flip(prop::sample::Index, u8),
    Delete(prop::sample::Index, usize),
    Insert(prop::sample::Index, Vec<u8>),
    RepeatLine(prop::sample::Index, prop::sample::Index),
    DeleteLine(prop::sample::Index),
}

fn edit() -> impl Strategy<Value = Edit> {
    let place = any::<prop::sample::Index>;
    let token = prop::sample::select(vec![
        "[",
        "]",
        "[[",
        "{",
        "}",
        "\"",
        "\"\"\"",
        "'",
        "=",
        ",",
        "\n",
        "\r",
        "#",
        ".",
        "-",
        "0",
        "9",
        "[day]\n",
        "[[day]]\n",
        "[kit]\n",
        "kg",
        "nan",
        "\u{fc}",
        "\0",
    ]);
    let token = token.prop_map(|token| token.as_bytes().to_vec());
    let junk = prop::collection::vec(any::<u8>(), 1..4);
    prop_oneof![
        (place(), any::<u8>()).prop_map(|(at, byte)| Edit::Flip(at, byte)),
        (place(), 1..12_usize).prop_map(|(at, count)| Edit::Delete(at, count)),
        (place(), prop_oneof![4 => token, 1 => junk]).prop_map(|(at, b)| Edit::Insert(at, b)),
        (place(), place()).prop_map(|(from, to)| Edit::RepeatLine(from, to)),
        place().prop_map(Edit::DeleteLine),
    ]
}

impl Edit {
    fn apply(&self, text: &mut Vec<u8>) {
        let lines: Vec<Vec<u8>> =
            text.split_inclusive(|b| *b == b'\n').map(<[u8]>::to_vec).collect();
        let start = |line: usize| lines[..line].iter().map(Vec::len).sum::<usize>();
        match self {
            _ if text.is_empty() => {}
            Edit::Flip(at, byte) => {
                let at = at.index(text.len());
                text[at] = *byte;
            }
            Edit::Delete(at, count) => {
                let at = at.index(text.len());
                text.drain(at..text.len().min(at + count));
            }
            Edit::Insert(at, bytes) => {
                let at = at.index(text.len());
                text.splice(at..at, bytes.iter().copied());
            }
            Edit::RepeatLine(from, to) => {
                let to = start(to.index(lines.len()));
                text.splice(to..to, lines[from.index(lines.len())].clone());
            }
            Edit::DeleteLine(at) => {
                let line = at.index(lines.len());
                text.drain(start(line)..start(line) + lines[line].len());
            }
        }
    }
}

/// Reads the text; every problem must lie in it, the place after the last character of a line
/// included.
fn probe(bytes: &[u8]) -> Result<(), TestCaseError> {
    inside(bytes, read_kit(bytes).err())?;
    match review_plan(bytes, None, &[]) {
        Ok(Reviewed { block, notes }) => {
            prop_assert_eq!(Ok(block), read_plan(bytes));
            inside(bytes, Some(notes).filter(|notes| !notes.is_empty()))?;
        }
        Err(problems) => inside(bytes, Some(problems))?,
    }
    inside(bytes, read_plan(bytes).err())
}

fn inside(bytes: &[u8], problems: Option<Vec<Problem>>) -> Result<(), TestCaseError> {
    let Some(problems) = problems else { return Ok(()) };
    prop_assert!(!problems.is_empty() && problems.len() <= 50);
    prop_assert!(problems.is_sorted());
    let text = String::from_utf8_lossy(bytes);
    let lines: Vec<&str> = text.split('\n').collect();
    for problem in &problems {
        let line = lines.get(problem.line as usize - 1);
        prop_assert!(line.is_some(), "{problem:?}");
        let columns = line.map_or(0, |line| line.chars().count()) + 1;
        prop_assert!((1..=columns).contains(&(problem.column as usize)), "{problem:?}");
        prop_assert!(!problem.what.is_empty() && !problem.help.is_empty());
        prop_assert!(!problem.what.contains('\n') && !problem.help.contains('\n'));
    }
    Ok(())
}

proptest! {
    #[test]
    fn any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        probe(&bytes)?;
    }

    #[test]
    fn any_text(text in "\\PC{0,200}") {
        probe(text.as_bytes())?;
    }

    #[test]
    fn any_toml_like_text(
        text in "([\\[\\]{}=,.\"'# \n]|block|kit|day|piece|movement|name|x|-?[0-9]|kg|s|true){0,60}"
    ) {
        probe(text.as_bytes())?;
    }

    #[test]
    fn any_spoilt_plan(edits in prop::collection::vec(edit(), 0..6), every_kind in any::<bool>()) {
        let mut text = if every_kind { EVERY_KIND.to_vec() } else { DEMO.to_vec() };
        for edit in &edits {
            edit.apply(&mut text);
        }
        probe(&text)?;
    }
}

/// Deep nesting must not run out of stack, and a full text of brackets must not take for ever.
#[test]
fn brackets_all_the_way() {
    for bracket in ["[", "{a=", "a.", "[[", "\"", "'''", "]", "a=[1\n", "a=\n", "[a\n"] {
        let text = bracket.repeat(30 * 1024 / bracket.len());
        probe(text.as_bytes()).unwrap();
        probe(format!("a = {text}").as_bytes()).unwrap();
    }
}

/// The slowest kit that is still accepted takes a moment, not a minute.
#[test]
fn a_kit_with_very_many_loads() {
    let mass = |number: u32| f64::from(number * number) / 4.0;
    let plate = |number| format!("{{ mass = \"{} kg\", count = 200 }},", mass(number));
    let plates: String = (1..=30).map(plate).collect();
    let text = format!("[kit]\nbar = [{{ name = \"x\", mass = \"1 kg\" }}]\nplate = [{plates}]\n");
    probe(text.as_bytes()).unwrap();
    let problems = read_plan(text.as_bytes()).unwrap_err();
    assert!(problems.iter().all(|problem| !problem.what.contains("plate")), "{problems:#?}");
}

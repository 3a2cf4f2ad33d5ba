//! Every sentence a person reads stands in a catalogue: the code has none of its own.

use std::collections::BTreeMap;
use std::fs;
use std::str::FromStr;

use holdfast_tests::sources::{folder, sources};
use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// Texts in the code that look like sentences and are none, by file: why each may stand there.
const NOT_SENTENCES: &[(&str, &str, &str)] = &[
    ("core/src/crew/recovery.rs", "Look", PRINTED),
    ("core/src/crew/recovery.rs", "Show", PRINTED),
    ("core/src/crew/recovery.rs", "Confirm", PRINTED),
    ("core/src/crew/recovery.rs", "Moved", PRINTED),
    ("core/src/crew/recovery.rs", "Copied", PRINTED),
    ("core/src/device/unsaid.rs", "", PRINTED),
    ("core/src/exchange/ledger.rs", "?2 NOTNULL", "a part of a wrong query"),
    ("core/src/exchange/ledger.rs", "?1 NOTNULL", "a part of a wrong query"),
    ("core/src/exchange/web/dav/mod.rs", "", "names of headers, and what stands in them"),
    ("core/src/exchange/web/dav/propfind.rs", "<?xml", "what a server is asked"),
    ("core/src/exchange/web/remote.rs", "Basic ", "a header"),
    ("core/src/exchange/web/s3/code.rs", "", "words of servers, to be looked for"),
    ("core/src/exchange/web/s3/list.rs", "", "words of servers, to be looked for"),
    ("core/src/exchange/web/s3/mod.rs", "User-Agent", "the name of a header"),
    ("core/src/exchange/web/s3/sign.rs", "{ALGORITHM}", "a header"),
    ("core/src/exchange/web/secret.rs", "Secret", "what stands in a secret's place"),
    ("core/src/instant.rs", "not known", "names a boot in an entry"),
    ("core/src/load/daily/day.rs", "", CALLER),
    ("core/src/load/one_rep_max/equation.rs", "", SOURCE),
    ("core/src/load/one_rep_max/estimate.rs", "", CALLER),
    ("core/src/load/one_rep_max/table.rs", "", SOURCE),
    ("core/src/load/plates/ramp.rs", "", CALLER),
    ("core/src/load/rating.rs", "", "the scale's own published words, and what a caller did wrong"),
    ("core/src/load/rest.rs", "", SOURCE),
    ("core/src/load/strength/seen.rs", "", CALLER),
    ("core/src/load/volume.rs", "", CALLER),
    ("core/src/motion/dose.rs", "", SOURCE),
    ("core/src/motion/error.rs", "", CALLER),
    ("core/src/motion/trend/readings.rs", "", CALLER),
    ("core/src/plan/read/fault.rs", "", "what the TOML parser says, to be looked for"),
    ("core/src/plan/scheme.rs", " open", "a scheme's key in journals"),
    ("core/src/planted.rs", "", "what tests call a bug"),
    ("core/src/store/append.rs", "(planted panic)", "a fault for tests"),
    ("core/src/store/query.rs", " ", "the rest of a query"),
    ("core/src/trust/pairing/coach.rs", "Invited", PRINTED),
    ("core/src/trust/pairing/coach.rs", "Opened", PRINTED),
    ("desk/src/demo/mod.rs", "Maren", DEMO),
    ("desk/src/demo/mod.rs", "weeks  = ", "a line of the demo's plan"),
    ("desk/src/demo/mod.rs", "\n{}\n  {}\n\n{}\n  {me} --home", "commands to copy"),
    ("desk/src/demo/people.rs", "", DEMO),
    ("desk/src/demo/rules.rs", "", DEMO),
    ("desk/src/help.rs", "Usage: ", "what clap writes, to be looked for"),
    ("desk/src/now.rs", "another day", "names a boot"),
    ("desk/src/pair/qr.rs", "<svg", "a picture"),
    ("desk/src/print/words.rs", " open", "a scheme's key, to be looked for"),
    ("desk/src/report/chart/ink.rs", " ", "SVG"),
    ("desk/src/report/marked.rs", "<time datetime", "HTML"),
    ("desk/src/session/full/keys.rs", "extra {text}", "a line as it is typed"),
    ("desk/src/session/full/keys.rs", "finish {text}", "a line as it is typed"),
];

/// The arithmetic's own errors: a shell gives it nothing it refuses.
const CALLER: &str = "what a caller of the arithmetic did wrong";
const PRINTED: &str = "a name as `Debug` prints it, for developers";
const SOURCE: &str = "where a figure was published";
const DEMO: &str = "what invented people are called and said";

/// Macros whose texts no person reads: names in formats, and what only a test or a fault of ours shows.
const OTHER_MACROS: &[&str] = &[
    "keyword",
    "bodies",
    "panic",
    "assert",
    "assert_eq",
    "assert_ne",
    "debug_assert",
    "debug_assert_eq",
    "unreachable",
];

/// The attributes whose texts are shown.
const SHOWN_ATTRIBUTES: &[&str] = &["error", "arg", "command"];

/// What SQLite reads.
const SQL: &[&str] = &[
    "SELECT", "INSERT", "UPDATE", "DELETE", "CREATE", "ALTER", "DROP", "PRAGMA", "WITH", "BEGIN",
    "VACUUM",
];

/// True for what a person could read as words: a space beside a letter, or a word with a capital.
fn is_sentence(text: &str) -> bool {
    let mut plain = String::new();
    let mut depth = 0;
    for letter in text.chars() {
        match letter {
            '{' => depth += 1,
            '}' if depth > 0 => depth -= 1,
            _ if depth == 0 => plain.push(letter),
            _ => {}
        }
    }
    let trimmed = plain.trim_start();
    if SQL.iter().any(|verb| trimmed.starts_with(verb)) {
        return false;
    }
    // A line of a plan, as an example of what to write.
    if trimmed.split_once(" = ").is_some_and(|(key, _)| !key.contains(' ')) {
        return false;
    }
    let units = ["kg", "lb", "min", "s", "cm"];
    if plain.split_whitespace().all(|word| units.contains(&word)) {
        return false;
    }
    let letters: Vec<char> = plain.chars().collect();
    let word = |two: &[char]| two[0].is_alphabetic() && two[1].is_alphabetic();
    let capital = letters.len() > 2 && letters[0].is_uppercase() && letters[1].is_lowercase();
    let spaced = letters.windows(2).any(|two| {
        (two[0] == ' ' && two[1].is_alphabetic()) || (two[0].is_alphabetic() && two[1] == ' ')
    });
    letters.windows(2).any(word) && (spaced || capital)
}

/// The string literals of some code that may reach a person.
fn texts(stream: TokenStream, found: &mut Vec<String>) {
    let tokens: Vec<TokenTree> = stream.into_iter().collect();
    let mut at = 0;
    let mut skip_item = false;
    while at < tokens.len() {
        match (&tokens[at], tokens.get(at + 1)) {
            // An attribute.
            (TokenTree::Punct(hash), Some(TokenTree::Group(group)))
                if hash.as_char() == '#' && group.delimiter() == Delimiter::Bracket =>
            {
                let text = group.stream().to_string();
                skip_item |= text.replace(' ', "") == "cfg(test)";
                let name = text.split(|letter: char| !letter.is_alphanumeric()).next();
                if name.is_some_and(|name| SHOWN_ATTRIBUTES.contains(&name)) {
                    texts(group.stream(), found);
                }
                at += 2;
                continue;
            }
            // An attribute of the whole file: its documentation.
            (TokenTree::Punct(hash), Some(TokenTree::Punct(bang)))
                if hash.as_char() == '#' && bang.as_char() == '!' =>
            {
                at += 3;
                continue;
            }
            // A macro.
            (TokenTree::Ident(name), Some(TokenTree::Punct(bang)))
                if bang.as_char() == '!' && OTHER_MACROS.contains(&name.to_string().as_str()) =>
            {
                at += 3;
                continue;
            }
            // `expect("...")` says why something cannot happen.
            (TokenTree::Ident(name), Some(TokenTree::Group(_))) if name == "expect" => {
                at += 2;
                continue;
            }
            (TokenTree::Group(group), _) => {
                // The body of an item that is only compiled for checks.
                let skipped = skip_item && group.delimiter() == Delimiter::Brace;
                if skipped {
                    skip_item = false;
                } else {
                    texts(group.stream(), found);
                }
            }
            (TokenTree::Punct(end), _) if end.as_char() == ';' => skip_item = false,
            (TokenTree::Literal(literal), _) => {
                if let Ok(text) = syn::parse_str::<syn::LitStr>(&literal.to_string())
                    && is_sentence(&text.value())
                {
                    found.push(text.value());
                }
            }
            _ => {}
        }
        at += 1;
    }
}

#[test]
fn no_sentence_stands_in_the_code() {
    let mut stray: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut used = Vec::new();
    for part in ["core/src", "carry/src", "desk/src"] {
        for path in sources(&folder(part)) {
            let code = TokenStream::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
            let name = path.strip_prefix(folder("")).unwrap().display().to_string();
            let mut found = Vec::new();
            texts(code, &mut found);
            found.retain(|text| {
                let known = NOT_SENTENCES
                    .iter()
                    .position(|(file, known, _)| name == *file && text.starts_with(*known));
                used.extend(known);
                known.is_none()
            });
            if !found.is_empty() {
                stray.insert(name, found);
            }
        }
    }
    let count: usize = stray.values().map(Vec::len).sum();
    assert!(stray.is_empty(), "{count} sentences outside the catalogues: {stray:#?}");
    let idle: Vec<_> = (0..NOT_SENTENCES.len())
        .filter(|at| !used.contains(at))
        .map(|at| NOT_SENTENCES[at])
        .collect();
    assert!(idle.is_empty(), "not found any more: {idle:?}");
}

/// What the law is read with sees what it should.
#[test]
fn sentences_are_told_from_names() {
    for sentence in ["no such set", "{} of {}", "Saved", "{name} is not there", "set {set}"] {
        assert!(is_sentence(sentence), "{sentence}");
    }
    for name in [
        "kg",
        "low-back",
        "{} min {} s",
        "reps = [8, 6]",
        "{}: {}",
        "SELECT 1 FROM entry",
        "%a %d",
        "x",
        "",
        " - ",
    ] {
        assert!(!is_sentence(name), "{name}");
    }
    let code = r#"
        #[doc = "not this one"] #[error("this one")] enum E {}
        fn a() { b("and this"); panic!("never this"); c.expect("nor this"); format!("{} too", 1); }
        #[cfg(test)] mod tests { fn t() { a("not in here"); } }
        const D: &str = "and here";
    "#;
    let mut found = Vec::new();
    texts(TokenStream::from_str(code).unwrap(), &mut found);
    assert_eq!(found, ["this one", "and this", "{} too", "and here"]);
}

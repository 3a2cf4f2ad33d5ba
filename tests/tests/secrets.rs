//! Keys and codes are in the key files, on paper, and nowhere else.

use std::fs;
use std::path::Path;

use data_encoding::{BASE64, BASE64URL_NOPAD, HEXLOWER, HEXUPPER};
use holdfast_tests::{Desk, SMALL_PLAN};

/// A key file begins with a label of 16 bytes and a version; then come the device's two secrets of 32 bytes, a mark, and
/// the recovery secret of 16 (docs/leaf.md).
fn secrets(home: &Path) -> Vec<Vec<u8>> {
    let file = fs::read(home.join("device.keys")).unwrap();
    assert!(file.starts_with(b"holdfast/keys/1"));
    let rest = &file[16..];
    assert_eq!(rest[65], 1, "the code is still on the device");
    vec![rest[1..33].to_vec(), rest[33..65].to_vec(), rest[66..82].to_vec()]
}

/// How a secret could be written down: as it is, and in the ways that text has for bytes.
fn written(secret: &[u8]) -> Vec<Vec<u8>> {
    let listed = format!("{secret:?}");
    let texts = [
        HEXLOWER.encode(secret),
        HEXUPPER.encode(secret),
        BASE64.encode(secret).trim_end_matches('=').to_owned(),
        BASE64URL_NOPAD.encode(secret),
        listed.trim_matches(['[', ']']).to_owned(),
    ];
    let mut all: Vec<Vec<u8>> = texts.into_iter().map(String::into_bytes).collect();
    all.push(secret.to_vec());
    all
}

fn files(folder: &Path) -> Vec<std::path::PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.push(path);
        }
    }
    found
}

#[test]
fn no_secret_is_anywhere_but_in_its_key_file() {
    let desk = Desk::new();
    let carrier = desk.path("carrier");
    desk.fine("coach", &["start", "--as", "coach", "--name", "Maren"], "");
    desk.fine("ana", &["start", "--as", "athlete", "--name", "Ana"], "");
    desk.write("plan.toml", SMALL_PLAN);
    desk.fine("coach", &["publish", &desk.path("plan.toml"), "--carrier", &carrier], "");
    desk.pair("coach", "ana");
    desk.fine("ana", &["exchange", "--carrier", &carrier], "");
    let mut said = String::new();
    let mut tells = |home: &str, args: &[&str], input: &str| {
        let ran = desk.run(home, args, input);
        said += &format!("{}{}", ran.out, ran.err);
    };
    tells(
        "ana",
        &["session", "--plain", "--day", "Any evening"],
        "50 x 8, 2 left\nnote so\nquit\n",
    );
    for home in ["ana", "coach"] {
        tells(home, &["exchange", "--carrier", &carrier], "");
        tells(home, &["verify"], "");
        tells(home, &["crew"], "");
        tells(home, &["crew", "--json"], "");
        tells(home, &["recovery", "--confirm"], "XXXX XXXX\n");
        tells(home, &["recovery", "--moved", "--copied"], "");
        tells(home, &["export", &desk.path(&format!("export-{home}"))], "");
    }
    tells("coach", &["board", "--json"], "");
    tells("coach", &["report", &desk.path("report.html")], "");
    tells("new", &["restore", "--carrier", &carrier], "0000-0000-0000-0000-0000-0000-0000-0000\n");
    tells("ana", &["stop-device", "1"], "0000\n");
    tells("ana", &["exchange", "--carrier", "/nowhere/at/all"], "");
    // A home whose key file is spoilt says so, and not what was in it.
    let broken = Path::new(&desk.path("ana")).join("device-copy.keys");
    let whole = fs::read(&broken).unwrap();
    fs::write(&broken, &whole[..whole.len() - 3]).unwrap();
    tells("ana", &["verify"], "");

    let folder = desk.path("");
    let mut looked_at = 0;
    for home in ["ana", "coach"] {
        let home = desk.path(home);
        let code = desk.fine(home.rsplit('/').next().unwrap(), &["recovery"], "");
        let group = |text: &str| text.split('-').all(|group| group.len() == 4);
        let code = code.split_whitespace().find(|text| text.len() == 39 && group(text));
        let code = code.unwrap_or_else(|| panic!("no code is shown"));
        let mut hidden: Vec<Vec<u8>> =
            secrets(Path::new(&home)).iter().flat_map(|secret| written(secret)).collect();
        // Two groups of it in a row are as good as a sixteenth of it each.
        for at in (0..=code.len() - 9).step_by(5) {
            let two = &code[at..at + 9];
            hidden.extend([two.as_bytes().to_vec(), two.replace('-', "").into_bytes()]);
        }
        let holds = |bytes: &[u8], secret: &[u8]| {
            bytes.windows(secret.len()).any(|window| window == secret)
        };
        for secret in &hidden {
            assert!(!holds(said.as_bytes(), secret), "it was printed");
        }
        for path in files(Path::new(&folder)) {
            let keys = path.extension().is_some_and(|ending| ending == "keys");
            if keys {
                continue;
            }
            looked_at += 1;
            let bytes = fs::read(&path).unwrap();
            for secret in &hidden {
                assert!(!holds(&bytes, secret), "{}", path.display());
            }
        }
    }
    assert!(looked_at > 30, "{looked_at}");
    assert!(said.len() > 2_000, "{said}");
}

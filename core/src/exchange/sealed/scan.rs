//! A look at the head of a sealed file before the library reads it (age-encryption.org/v1).
//!
//! The library reads as many recipients as there are: 4,000 of them cost it seconds. So whatever is not sealed as
//! leaves are is refused here: 1 to 16 recipients of X25519, and at most one of the meaningless ones that the
//! library itself adds to every file, so that readers learn to pass over what they do not know.

use super::SealedFault;

/// The longest head.
const MAX_HEAD: usize = 4 * 1024;
/// The most recipients.
pub(super) const MOST_STANZAS: usize = 16;
/// The longest of the meaningless ones.
const MAX_GREASE: usize = 300;
/// Signs of 32 bytes in base64 without padding.
const KEY_SIGNS: usize = 43;
/// Signs of a full line of a body.
const LINE_SIGNS: usize = 64;

/// True for base64 without padding (RFC 4648, section 4) in its one spelling, whose unused bits are zero.
fn is_base64(text: &str) -> bool {
    let signs = || text.bytes().map(value);
    let last = signs().next_back().flatten().unwrap_or_default();
    let unused = match text.len() % 4 {
        0 => 0,
        2 => last & 0b1111,
        3 => last & 0b11,
        _ => return false,
    };
    unused == 0 && signs().all(|value| value.is_some())
}

/// What a sign of base64 stands for.
fn value(sign: u8) -> Option<u8> {
    Some(match sign {
        b'A'..=b'Z' => sign - b'A',
        b'a'..=b'z' => sign - b'a' + 26,
        b'0'..=b'9' => sign - b'0' + 52,
        b'+' => 62,
        b'/' => 63,
        _ => return None,
    })
}

/// True for a word of a stanza's first line.
fn is_word(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_graphic())
}

/// Checks the head of a file.
pub(super) fn scan(file: &[u8]) -> Result<(), SealedFault> {
    is_leafs(file).then_some(()).ok_or(SealedFault::Envelope)
}

fn is_leafs(file: &[u8]) -> bool {
    let head = &file[..file.len().min(MAX_HEAD)];
    // The body is bytes: the text ends somewhere.
    let text = match std::str::from_utf8(head) {
        Ok(text) => text,
        Err(error) => std::str::from_utf8(&head[..error.valid_up_to()]).unwrap_or_default(),
    };
    let mut lines = Lines(text);
    if lines.next() != Some("age-encryption.org/v1") {
        return false;
    }
    let (mut sealed_to, mut greased) = (0, false);
    loop {
        let Some(line) = lines.next() else { return false };
        if let Some(mac) = line.strip_prefix("--- ") {
            return sealed_to > 0 && mac.len() == KEY_SIGNS && is_base64(mac);
        }
        let Some(arguments) = line.strip_prefix("-> ") else { return false };
        if let Some(key) = arguments.strip_prefix("X25519 ") {
            let Some(body) = lines.next() else { return false };
            let whole =
                [key, body].iter().all(|signs| signs.len() == KEY_SIGNS && is_base64(signs));
            sealed_to += 1;
            if !whole || sealed_to > MOST_STANZAS {
                return false;
            }
            continue;
        }
        if greased || !lines.is_grease(line) {
            return false;
        }
        greased = true;
    }
}

/// Lines with their newline.
struct Lines<'t>(&'t str);

impl<'t> Lines<'t> {
    fn next(&mut self) -> Option<&'t str> {
        let (line, rest) = self.0.split_once('\n')?;
        self.0 = rest;
        Some(line)
    }

    /// Reads the rest of a meaningless stanza that begins with this line: full lines of base64, then a shorter one.
    fn is_grease(&mut self, line: &str) -> bool {
        let mut words = line.strip_prefix("-> ").unwrap_or_default().split(' ');
        if !words.clone().all(is_word)
            || !words.next().is_some_and(|kind| kind.ends_with("-grease"))
        {
            return false;
        }
        let mut bytes = line.len();
        while bytes <= MAX_GREASE {
            let Some(body) = self.next().filter(|body| is_base64(body)) else { return false };
            bytes += body.len() + 1;
            if body.len() < LINE_SIGNS {
                return bytes <= MAX_GREASE;
            }
            if body.len() > LINE_SIGNS {
                return false;
            }
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const KEY: &str = "TEiF0ypqr+bpvcqXNyCVJpL7OuwPdVwPL7KQEbFDOCc";

    fn stanza() -> String {
        format!("-> X25519 {KEY}\n{KEY}\n")
    }

    fn head(stanzas: &str) -> Vec<u8> {
        let mut file = format!("age-encryption.org/v1\n{stanzas}--- {KEY}\n").into_bytes();
        file.extend([0xff, 0, 0xc3, 0x28]);
        file
    }

    fn grease(bytes: usize) -> String {
        let mut body = "A".repeat(bytes);
        let mut text = String::from("-> xY!-grease a b\n");
        while body.len() >= LINE_SIGNS {
            text += &format!("{}\n", body.drain(..LINE_SIGNS).collect::<String>());
        }
        text + &body + "\n"
    }

    #[test]
    fn recipients_as_leaves_have_them() {
        for stanzas in [1, 2, 16] {
            assert_eq!(scan(&head(&stanza().repeat(stanzas))), Ok(()), "{stanzas}");
        }
        for bytes in [0, 10, 64, 200] {
            assert_eq!(scan(&head(&(stanza() + &grease(bytes)))), Ok(()), "{bytes}");
            assert_eq!(scan(&head(&(grease(bytes) + &stanza()))), Ok(()), "{bytes}");
        }
    }

    #[test]
    fn everything_else_is_refused() {
        let greased = |words: &str, body: &str| stanza() + &format!("-> {words}\n{body}\n");
        assert_eq!(scan(&head(&greased("a-grease b", "AAAA"))), Ok(()));
        let cases: [(&str, String); 26] = [
            ("none", String::new()),
            ("grease alone", grease(10)),
            ("17", stanza().repeat(17)),
            ("4,000", stanza().repeat(4000)),
            ("two greases", grease(10) + &stanza() + &grease(10)),
            ("long grease", stanza() + &grease(320)),
            ("grease of 1 kB", stanza() + &grease(1000)),
            ("a password", "-> scrypt bGF2ZW5kZXI 18\nAAAA\n".to_owned() + &stanza()),
            ("ssh", format!("-> ssh-ed25519 AAAA {KEY}\n{KEY}\n{}", stanza())),
            ("a plugin", format!("-> yubikey AAAA\n{KEY}\n{}", stanza())),
            ("lattices", format!("-> mlkem768x25519 {KEY}\n{KEY}\n{}", stanza())),
            ("31 bytes", format!("-> X25519 {KEY}\n{}\n", &KEY[1..])),
            ("33 bytes", format!("-> X25519 {KEY}\n{KEY}A\n")),
            ("a key too many", format!("-> X25519 {KEY} {KEY}\n{KEY}\n")),
            ("padding", format!("-> X25519 {KEY}=\n{KEY}\n")),
            ("small letters", format!("-> x25519 {KEY}\n{KEY}\n")),
            ("a carriage return", format!("-> X25519 {KEY}\r\n{KEY}\r\n")),
            ("an empty line", format!("\n{}", stanza())),
            ("no body", format!("-> X25519 {KEY}\n")),
            // What the library would not read either.
            ("unused bits of a key", format!("-> X25519 {}d\n{KEY}\n", &KEY[..42])),
            ("unused bits of a body", format!("-> X25519 {KEY}\n{}d\n", &KEY[..42])),
            ("a control character", greased("a\u{1}-grease b", "AAAA")),
            ("letters beyond ASCII", greased("a-grease ü", "AAAA")),
            ("two spaces", greased("a-grease  b", "AAAA")),
            ("a space at the end", greased("a-grease ", "AAAA")),
            ("five signs", greased("a-grease b", "AAAAA")),
        ];
        for (what, stanzas) in cases {
            assert_eq!(scan(&head(&stanzas)), Err(SealedFault::Envelope), "{what}");
        }
        let good = head(&stanza());
        for file in [
            Vec::new(),
            b"age-encryption.org/v2\n".to_vec(),
            good[1..].to_vec(),
            good[..good.len() - 6].to_vec(),
            b"-----BEGIN AGE ENCRYPTED FILE-----\n".to_vec(),
            [b"\xef\xbb\xbf", &good[..]].concat(),
            head(&(stanza() + &"-> X25519 ".repeat(500))),
        ] {
            assert_eq!(scan(&file), Err(SealedFault::Envelope));
        }
        let unused = String::from_utf8_lossy(&good).replace("OCc\n\u{fffd}", "OCd\n");
        assert_eq!(scan(unused.as_bytes()), Err(SealedFault::Envelope));
        let mac = String::from_utf8_lossy(&good).replace("--- ", "--- AAAA");
        assert_eq!(scan(mac.as_bytes()), Err(SealedFault::Envelope));
    }

    proptest! {
        #[test]
        fn anything_can_come(file in prop::collection::vec(any::<u8>(), 0..500), lines in "(-> (X25519|a-grease) [A-Za-z/+]{0,70}\n[A-Za-z]{0,70}\n){0,6}") {
            let _ = (scan(&file), scan(&head(&lines)));
        }
    }
}

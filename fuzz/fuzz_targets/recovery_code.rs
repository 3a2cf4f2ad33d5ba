//! A recovery code as somebody types it.

#![no_main]

use holdfast_core::trust::{RECOVERY_BYTES, Recovery};
use holdfast_fuzz::{laws, within};
use libfuzzer_sys::fuzz_target;

/// What was typed, in the one spelling that codes have.
fn spelled(typed: &str) -> String {
    let signs = typed.chars().filter(|sign| !sign.is_whitespace() && *sign != '-');
    let plain = |sign: char| match sign.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        sign => sign,
    };
    signs.map(plain).collect()
}

fn law(typed: &str) -> Option<Recovery> {
    match within(8 * typed.len() + 4096, || Recovery::read(typed)) {
        Ok(read) => {
            let code = read.code();
            assert_eq!(spelled(typed), code.replace('-', ""), "a code has one meaning");
            let again = Recovery::read(&code).map(|again| again.code());
            assert_eq!(again.as_ref(), Ok(&code));
            Some(read)
        }
        Err(fault) => {
            laws::said(fault);
            None
        }
    }
}

/// A code, typed as the rest of the bytes say: small letters, what is easily mistaken, something between.
fn typed(code: &str, how: &[u8]) -> String {
    let mut typed = String::new();
    for (at, sign) in code.chars().enumerate() {
        let how = how.get(at).copied().unwrap_or_default();
        typed.push(match (how % 8, sign) {
            (1, sign) => sign.to_ascii_lowercase(),
            (2, '0') => 'O',
            (3, '0') => 'o',
            (2, '1') => 'I',
            (3, '1') => 'l',
            (4, '-') => '\n',
            (5, '-') => '\u{a0}',
            (_, sign) => sign,
        });
        if how >= 192 {
            typed.push([' ', '-', '\t'][usize::from(how % 3)]);
        }
    }
    typed
}

fuzz_target!(|data: &[u8]| {
    if let Ok(typed) = std::str::from_utf8(data) {
        law(typed);
    }
    if let Some((secret, how)) = data.split_first_chunk::<RECOVERY_BYTES>() {
        let code = Recovery::new(*secret).code();
        let read = law(&typed(&code, how)).expect("a code is read however it is typed");
        assert_eq!(read.code(), code);
    }
});

//! XML as servers answer it, read within limits: no declarations of types, no entities of their own, bounded depth.

use quick_xml::Reader;
use quick_xml::escape::resolve_xml_entity;
use quick_xml::events::Event;

/// The deepest element.
const MAX_DEPTH: usize = 32;
/// The longest text of one element that is kept; a longer one is cut, and then is no name of ours.
const MAX_TEXT_BYTES: usize = 8 * 1024;

/// A body that is not XML as carriers answer it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct NotRead;

/// An element that is open.
struct Open {
    /// Its name without a prefix: which one a server chooses means nothing.
    name: String,
    text: String,
}

/// Reads a body and tells of each element as it ends: the names from the outermost one to it, without
/// prefixes, and its text. Told `false`, it goes no further.
pub(super) fn read(
    body: &[u8],
    mut ended: impl FnMut(&[&str], &str) -> bool,
) -> Result<(), NotRead> {
    let body = body.strip_prefix(b"\xef\xbb\xbf").unwrap_or(body);
    let text = std::str::from_utf8(body).map_err(|_| NotRead)?;
    let mut reader = Reader::from_str(text);
    reader.config_mut().expand_empty_elements = true;
    let mut open: Vec<Open> = Vec::new();
    let mut roots = 0_u32;
    loop {
        match reader.read_event().map_err(|_| NotRead)? {
            Event::Start(start) => {
                roots += u32::from(open.is_empty());
                if open.len() == MAX_DEPTH || roots > 1 {
                    return Err(NotRead);
                }
                let name = start.local_name();
                open.push(Open { name: name.as_ref().to_owned(), text: String::new() });
            }
            Event::End(_) => {
                let path: Vec<&str> = open.iter().map(|open| open.name.as_str()).collect();
                let text = open.last().ok_or(NotRead)?.text.trim();
                if !ended(&path, text) {
                    return Ok(());
                }
                open.pop();
            }
            Event::Text(text) => add(&mut open, &text)?,
            Event::CData(text) => add(&mut open, &text)?,
            Event::GeneralRef(reference) => {
                let letter = reference.resolve_char_ref().map_err(|_| NotRead)?;
                match (letter, resolve_xml_entity(&reference)) {
                    (Some(letter), _) => add(&mut open, letter.encode_utf8(&mut [0; 4]))?,
                    (None, Some(text)) => add(&mut open, text)?,
                    (None, None) => return Err(NotRead),
                }
            }
            Event::DocType(_) => return Err(NotRead),
            Event::Decl(_) | Event::Comment(_) | Event::PI(_) => {}
            Event::Empty(_) => return Err(NotRead),
            Event::Eof => break,
        }
    }
    // Cut off, or with nothing in it.
    if open.is_empty() && roots == 1 { Ok(()) } else { Err(NotRead) }
}

fn add(open: &mut [Open], text: &str) -> Result<(), NotRead> {
    match open.last_mut() {
        Some(last) if last.text.len() + text.len() <= MAX_TEXT_BYTES => last.text.push_str(text),
        Some(_) => return Err(NotRead),
        None if text.trim().is_empty() => {}
        None => return Err(NotRead),
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(body: &str) -> Result<Vec<String>, NotRead> {
        let mut told = Vec::new();
        read(body.as_bytes(), |path, text| {
            told.push(format!("{}={text}", path.join("/")));
            true
        })?;
        Ok(told)
    }

    #[test]
    fn elements_are_told_as_they_end_with_their_text() {
        let body = "\u{feff}<?xml version=\"1.0\"?><!-- c --><D:a xmlns:D=\"DAV:\"> <b>x &amp; &#x79;<![CDATA[<z>]]></b>\
                    <c/></D:a>";
        assert_eq!(told(body).unwrap(), ["a/b=x & y<z>", "a/c=", "a="]);
    }

    #[test]
    fn what_could_cost_or_mislead_is_not_read() {
        let deep = |depth: usize| "<a>".repeat(depth) + &"</a>".repeat(depth);
        assert_eq!(told(&deep(MAX_DEPTH)).unwrap().len(), MAX_DEPTH);
        let long = format!("<a>{}</a>", "x".repeat(MAX_TEXT_BYTES + 1));
        for body in [
            "",
            "text",
            "<a>",
            "<a></b>",
            "<a/><b/>",
            "<a/>text",
            "<a>&own;</a>",
            "<!DOCTYPE a [<!ENTITY own \"x\">]><a>&own;</a>",
            "<!DOCTYPE html><html></html>",
            &deep(MAX_DEPTH + 1),
            &deep(100_000),
            &long,
        ] {
            assert_eq!(told(body), Err(NotRead), "{}", &body[..body.len().min(60)]);
        }
        assert_eq!(read(b"<a>\xff</a>", |_, _| true), Err(NotRead));
    }
}

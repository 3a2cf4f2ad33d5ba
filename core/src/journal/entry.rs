//! The envelope around everything that is logged, and its line of JSON.

use std::borrow::Cow;

use chrono::{DateTime, SecondsFormat};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use sha2::{Digest, Sha256};

use super::sane::{has_plain_texts, is_sane};
use super::{Body, Hlc, Version};
use crate::error::{Error, Result, shown};
use crate::id::{DeviceId, RecordId};
use crate::instant::Instant;
use crate::say;

/// The longest line a journal holds, without its newline.
pub const MAX_LINE_BYTES: usize = 64 * 1024;

/// The deepest nesting a line may have.
pub const MAX_DEPTH: usize = 16;

/// The entry version this reader can interpret: an entry that asks for more is kept, counted and
/// carried, but not shown.
pub const READER_VERSION: u32 = 1;

/// What names an entry: its writer and number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct EntryId {
    /// The device that wrote it.
    #[serde(rename = "d")]
    pub device: DeviceId,
    /// Its number in that device's journal.
    #[serde(rename = "n")]
    pub number: u64,
}

/// The envelope as it is written, one JSON object a line.
#[derive(Clone, Debug, Serialize, Deserialize)]
struct Line {
    /// The reader version needed to interpret the entry.
    v: u32,
    n: u64,
    hlc: Hlc,
    /// The wall clock as the writer saw it, RFC 3339 with offset.
    t: String,
    k: String,
    id: RecordId,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    par: Vec<Version>,
    body: Box<RawValue>,
}

/// An entry with the exact bytes it was written in.
///
/// The bytes are the truth: what this reader does not know in them survives being stored, carried
/// and folded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its writer and number.
    pub id: EntryId,
    /// The reader version needed to interpret it.
    pub needs: u32,
    /// Its place in the order that breaks ties.
    pub hlc: Hlc,
    /// The wall clock when it was written, milliseconds since 1970.
    pub wall_ms: i64,
    /// The wall clock's offset from UTC, minutes east.
    pub offset_min: i32,
    /// What kind of thing it says.
    pub kind: String,
    /// The record it says something about.
    pub record: RecordId,
    /// The entries it replaces.
    pub parents: Vec<Version>,
    /// The line, without its newline.
    pub raw: String,
    /// The first eight bytes of the line's SHA-256: worked out once, and asked for at every table.
    digest: i64,
}

impl Entry {
    /// Writes a new entry. Without `record` it starts a record of its own.
    ///
    /// # Errors
    /// [`Error::TooLong`] when the line would not fit the journal's limit.
    pub(crate) fn write(
        id: EntryId,
        hlc: Hlc,
        at: &Instant,
        record: Option<RecordId>,
        parents: Vec<Version>,
        kind: &str,
        body: Box<RawValue>,
    ) -> Result<Entry> {
        let record = record.unwrap_or_else(|| {
            RecordId::derive(id.device, id.number, at.wall_ms, body.get().as_bytes())
        });
        let local = at.local();
        let line = Line {
            v: 1,
            n: id.number,
            hlc,
            t: local.to_rfc3339_opts(SecondsFormat::Millis, false),
            k: kind.to_owned(),
            id: record,
            par: parents,
            body,
        };
        let raw = serde_json::to_string(&line)?;
        if raw.len() > MAX_LINE_BYTES {
            return Err(Error::TooLong { found: raw.len(), limit: MAX_LINE_BYTES });
        }
        Ok(Entry {
            id,
            needs: line.v,
            hlc,
            wall_ms: local.timestamp_millis(),
            offset_min: local.offset().local_minus_utc() / 60,
            kind: line.k,
            record,
            parents: line.par,
            digest: line_digest(&raw),
            raw,
        })
    }

    /// Reads a line written by `device`.
    ///
    /// # Errors
    /// What is wrong with the line, in words.
    pub fn read(device: DeviceId, raw: &str) -> std::result::Result<Entry, String> {
        if raw.len() > MAX_LINE_BYTES {
            return Err(say::exchange::line_too_long(raw.len(), MAX_LINE_BYTES));
        }
        if depth(raw) > MAX_DEPTH {
            return Err(say::exchange::too_deep(MAX_DEPTH));
        }
        // The parser's words quote the line.
        let line: Line = serde_json::from_str(raw).map_err(|error| shown(&error.to_string()))?;
        let time =
            DateTime::parse_from_rfc3339(&line.t).map_err(|error| shown(&error.to_string()))?;
        // SQLite's integers are signed.
        if line.n == 0 || i64::try_from(line.n).is_err() {
            return Err(say::exchange::number_out_of_range(line.n));
        }
        Ok(Entry {
            id: EntryId { device, number: line.n },
            needs: line.v,
            hlc: line.hlc,
            wall_ms: time.timestamp_millis(),
            offset_min: time.offset().local_minus_utc() / 60,
            kind: line.k,
            record: line.id,
            parents: line.par,
            digest: line_digest(raw),
            raw: raw.to_owned(),
        })
    }

    /// What another entry names it by.
    pub fn version(&self) -> Version {
        Version::of(self.id, self.digest())
    }

    /// The first eight bytes of the line's SHA-256: tells two entries of one number apart, which
    /// only a restored backup or a cloned device can write.
    pub fn digest(&self) -> i64 {
        self.digest
    }
}

/// The first eight bytes of a line's SHA-256.
pub(crate) fn line_digest(raw: &str) -> i64 {
    let hash = Sha256::digest(raw.as_bytes());
    let mut head = [0; 8];
    head.copy_from_slice(&hash[..8]);
    i64::from_be_bytes(head)
}

/// The body of a line, decoded; `None` when this reader cannot interpret it.
pub(crate) fn body_of(raw: &str) -> Option<Body> {
    #[derive(Deserialize)]
    struct BodyOnly<'a> {
        v: u32,
        // With an escape in it, it does not stand in the line as it is.
        #[serde(borrow)]
        k: Cow<'a, str>,
        #[serde(borrow)]
        body: &'a RawValue,
    }
    let line: BodyOnly = serde_json::from_str(raw).ok()?;
    let body = (line.v <= READER_VERSION).then(|| Body::decode(&line.k, line.body.get()))?;
    // Numbers and texts no tap can log come from a hostile hand; sums over them must not overflow.
    let (kind, json) = (&line.k, line.body.get());
    // What only a newer app knows of it is shown by nobody here.
    let known = |body: &Body| body.encode().is_ok_and(|known| has_plain_texts(kind, known.get()));
    body.filter(is_sane).filter(|body| has_plain_texts(kind, json) || known(body))
}

/// The body of a line as it was written.
pub(crate) fn raw_body_of(raw: &str) -> Option<String> {
    let line: Line = serde_json::from_str(raw).ok()?;
    Some(line.body.get().to_owned())
}

/// The deepest nesting of brackets outside strings.
pub(crate) fn depth(text: &str) -> usize {
    let (mut now, mut deepest, mut quoted, mut escaped) = (0_usize, 0, false, false);
    for byte in text.bytes() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            b'{' | b'[' if !quoted => {
                now += 1;
                deepest = deepest.max(now);
            }
            b'}' | b']' if !quoted => now = now.saturating_sub(1),
            _ => {}
        }
    }
    deepest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::id::random;

    fn device() -> DeviceId {
        DeviceId(random([3; 16]))
    }

    fn at() -> Instant {
        Instant { wall_ms: 1_795_563_000_123, offset_min: 60, boot_ms: 5, boot_id: "b".into() }
    }

    fn entry(body: &str) -> Entry {
        let id = EntryId { device: device(), number: 7 };
        let body = RawValue::from_string(body.to_owned()).unwrap();
        Entry::write(
            id,
            Hlc { ms: 9, count: 2 },
            &at(),
            None,
            vec![Version::of(id, 3)],
            "later",
            body,
        )
        .unwrap()
    }

    #[test]
    fn a_line_reads_back_as_it_was_written() {
        let written = entry(r#"{"a":[1,2],"b":"}]"}"#);
        assert_eq!(Entry::read(device(), &written.raw), Ok(written.clone()));
        assert!(written.raw.contains(r#""t":"2026-11-25T00:30:00.123+01:00""#), "{}", written.raw);
    }

    #[test]
    fn unknown_kinds_and_fields_survive_to_the_byte() {
        let raw = entry("{}").raw.replace("\"k\":", "\"mood\":{\"x\":1},\"k\":");
        let read = Entry::read(device(), &raw).unwrap();
        assert_eq!(read.raw, raw);
        assert_eq!(body_of(&read.raw), None);
    }

    /// A text that is shown is in one line; what nobody here knows of a body, its name or what is in it, is not shown.
    #[test]
    fn only_what_is_shown_has_to_be_plain() {
        let note = |more: &str, words: &str| {
            let id = "0199aa00-0000-7000-8000-000000000000";
            let body = format!(r#"{{"person":"{id}","session":"{id}",{more}"words":"{words}"}}"#);
            body_of(&entry(&body).raw.replace("\"k\":\"later\"", "\"k\":\"note\"")).is_some()
        };
        assert!(note("", "Griff rutschte"));
        assert!(!note("", "a\\nCoach: stop"));
        assert!(note(r#""mood":"a\nb","#, "a") && note(r#""mo\nod":1,"#, "a"));
        assert!(!note(r#""mood":"a\nb","#, "a\\u001b[2J"));
    }

    /// Whoever reads a line's kind reads the same, however it is spelled.
    #[test]
    fn a_kind_spelled_with_an_escape_is_that_kind() {
        let raw = entry(r#"{"flag":"0199aa00-0000-7000-8000-000000000000"}"#).raw;
        let plain = raw.replace("\"k\":\"later\"", "\"k\":\"clear\"");
        let escaped = raw.replace("\"k\":\"later\"", "\"k\":\"\\u0063lear\"");
        assert_eq!(Entry::read(device(), &escaped).unwrap().kind, "clear");
        let body = body_of(&plain);
        assert!(body.is_some());
        assert_eq!(body_of(&escaped), body);
    }

    #[test]
    fn hostile_lines_are_refused_in_words() {
        let deep = entry(&format!("{}{}", "[".repeat(15), "]".repeat(15)));
        assert!(Entry::read(device(), &deep.raw).is_ok());
        let deeper = deep.raw.replace("[[[", "[[[[").replace("]]]", "]]]]");
        assert_eq!(
            Entry::read(device(), &deeper),
            Err("the line is nested deeper than 16 levels".into())
        );
        // What is quoted of a line moves no cursor, and has an end.
        let good = entry("{}").raw;
        let id = format!("\"id\":\"{}", &entry("{}").record.to_string()[..8]);
        assert!(good.contains(&id), "{good}");
        for odd in ["\\u007f", "\\u001b[2J", &"a".repeat(5_000)] {
            for bad in [
                good.replace(&id, &format!("\"id\":\"{odd}")),
                good.replace("\"v\":1", &format!("\"v\":\"{odd}\"")),
            ] {
                let reason = Entry::read(device(), &bad).unwrap_err();
                assert!(!reason.contains(char::is_control), "{reason:?}");
                assert!(reason.chars().count() <= 200, "{reason}");
            }
        }
        let long = format!("{{\"x\":\"{}\"}}", "a".repeat(MAX_LINE_BYTES));
        assert!(Entry::read(device(), &long).unwrap_err().contains("at most 65536 fit"));
        for raw in
            ["", "{}", "null", "[]", "{\"v\":1", &entry("{}").raw.replace("\"n\":7", "\"n\":0")]
        {
            assert!(Entry::read(device(), raw).is_err(), "{raw}");
        }
    }
}

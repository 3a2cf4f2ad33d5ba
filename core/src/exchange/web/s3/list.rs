//! Pages of a listing (ListObjectsV2), with a delimiter: what lies one level down, and no deeper.

use super::super::address::is_segment;
use super::super::operation::Listing;
use super::super::xml::{self, NotRead};
use crate::exchange::ListedFile;

/// The longest mark of where a page ended.
const MAX_TOKEN_BYTES: usize = 4_096;

/// One page.
#[derive(Debug, Default)]
pub(super) struct Page {
    /// Where the next one begins; `None` when this was the last.
    pub(super) next: Option<String>,
}

/// Reads a page into a listing of what lies below `prefix`.
pub(super) fn read(body: &[u8], prefix: &str, listing: &mut Listing) -> Result<Page, NotRead> {
    let (mut is_right, mut is_encoded, mut is_cut) = (false, false, false);
    let (mut next, mut key, mut bytes) = (None, None, 0);
    let (mut files, mut folders) = (Vec::new(), Vec::new());
    xml::read(body, |path, text| {
        match path {
            ["ListBucketResult"] => is_right = true,
            ["ListBucketResult", "EncodingType"] => is_encoded = text == "url",
            ["ListBucketResult", "IsTruncated"] => is_cut = text == "true",
            ["ListBucketResult", "NextContinuationToken"] => next = Some(text.to_owned()),
            ["ListBucketResult", "Contents", "Key"] => key = Some(text.to_owned()),
            ["ListBucketResult", "Contents", "Size"] => bytes = text.parse().unwrap_or(0),
            ["ListBucketResult", "Contents"] => {
                files.extend(key.take().map(|key| (key, bytes)));
                bytes = 0;
            }
            ["ListBucketResult", "CommonPrefixes", "Prefix"] => folders.push(text.to_owned()),
            _ => {}
        }
        true
    })?;
    if !is_right {
        return Err(NotRead);
    }
    // How keys are written is said anywhere in a page.
    let name = |key: &str| name(key, prefix, is_encoded);
    for (key, bytes) in files {
        match name(&key) {
            // The prefix itself: some programs make an empty object in place of a folder.
            Some(name) if name.is_empty() => {}
            Some(name) if is_segment(&name) => listing.files.push(ListedFile { name, bytes }),
            _ => listing.refused += 1,
        }
    }
    for folder in folders {
        let inner = name(&folder).and_then(|name| name.strip_suffix('/').map(str::to_owned));
        match inner {
            Some(name) if is_segment(&name) => listing.folders.push(name),
            _ => listing.refused += 1,
        }
    }
    match (is_cut, next) {
        (false, _) => Ok(Page { next: None }),
        (true, Some(next)) if !next.is_empty() && next.len() <= MAX_TOKEN_BYTES => {
            Ok(Page { next: Some(next) })
        }
        // More, and no word of where.
        (true, _) => Err(NotRead),
    }
}

/// What stands behind the prefix in a key, decoded once.
fn name(key: &str, prefix: &str, is_encoded: bool) -> Option<String> {
    let key = if is_encoded {
        let spaced = key.replace('+', " ");
        percent_encoding::percent_decode_str(&spaced).decode_utf8().ok()?.into_owned()
    } else {
        key.to_owned()
    };
    key.strip_prefix(prefix).map(str::to_owned)
}

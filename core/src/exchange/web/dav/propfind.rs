//! Listing a folder by PROPFIND (RFC 4918, section 9.1), one level deep: three of five servers refuse more.

use super::super::MAX_NAMES;
use super::super::address::Address;
use super::super::operation::Listing;
use super::super::xml::{self, NotRead};
use crate::exchange::ListedFile;

/// What is asked of each file: whether it is a folder, and its size. An ETag means something else on each server.
pub(super) const ASKED: &str = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\
    <propfind xmlns=\"DAV:\"><prop><resourcetype/><getcontentlength/></prop></propfind>";

/// What one element `response` says, as far as it is read.
#[derive(Default)]
struct Response {
    href: Option<String>,
    /// False where its own status says that it is not there.
    gone: bool,
    is_folder: bool,
    bytes: Option<u64>,
    /// What the `propstat` that is being read says; counts once its status is known.
    part: Part,
}

#[derive(Default)]
struct Part {
    is_folder: bool,
    bytes: Option<u64>,
    is_refused: bool,
}

/// Reads the answer for a folder: what lies in it, and nothing that lies elsewhere.
pub(super) fn read(body: &[u8], folder: &Address, after: Option<&str>) -> Result<Listing, NotRead> {
    let mut listing = Listing { whole: true, ..Listing::default() };
    let (mut response, mut is_right, mut itself) = (Response::default(), false, false);
    xml::read(body, |path, text| {
        match path {
            ["multistatus"] => is_right = true,
            ["multistatus", "response", "href"] => response.href = Some(text.to_owned()),
            ["multistatus", "response", "status"] => response.gone = !is_done(text),
            ["multistatus", "response", "propstat", "status"] => {
                response.part.is_refused = !is_done(text);
            }
            ["multistatus", "response", "propstat", "prop", "resourcetype", "collection"] => {
                response.part.is_folder = true;
            }
            ["multistatus", "response", "propstat", "prop", "getcontentlength"] => {
                response.part.bytes = text.parse().ok();
            }
            ["multistatus", "response", "propstat"] => {
                let part = std::mem::take(&mut response.part);
                if !part.is_refused {
                    response.is_folder |= part.is_folder;
                    response.bytes = response.bytes.or(part.bytes);
                }
            }
            ["multistatus", "response"] => {
                let response = std::mem::take(&mut response);
                match response.href.as_deref().map(|href| name(href, folder)) {
                    _ if response.gone => {}
                    Some(Named::Itself) => itself = true,
                    Some(Named::Inside(name)) => {
                        if after.is_none_or(|after| name.as_str() > after) {
                            if listing.len() == MAX_NAMES {
                                listing.whole = false;
                                is_right = true;
                                return false;
                            }
                            add(&mut listing, name, &response);
                        }
                    }
                    Some(Named::Elsewhere) | None => listing.refused += 1,
                }
            }
            _ => {}
        }
        true
    })?;
    // Answers for another folder are not this folder's.
    let is_other = listing.refused > 0 && listing.len() == 0 && !itself;
    if !is_right || is_other {
        return Err(NotRead);
    }
    Ok(listing.sorted(after))
}

fn add(listing: &mut Listing, name: String, response: &Response) {
    if response.is_folder {
        listing.folders.push(name);
    } else {
        listing.files.push(ListedFile { name, bytes: response.bytes.unwrap_or(0) });
    }
}

/// A status line, `HTTP/1.1 200 OK`, that says it was done.
fn is_done(line: &str) -> bool {
    line.split_whitespace().nth(1).is_some_and(|status| status.starts_with('2'))
}

enum Named {
    Itself,
    Inside(String),
    Elsewhere,
}

/// What an href names, seen from the folder that was asked for. Only its last part is ever given out.
fn name(href: &str, folder: &Address) -> Named {
    let Ok(mut named) = folder.named(href) else { return Named::Elsewhere };
    // Behind a proxy a server may not know that it is reached by TLS, or at which port; the host it knows.
    if !named.origin.is_same_host(&folder.origin) {
        return Named::Elsewhere;
    }
    if named.path == folder.path {
        return Named::Itself;
    }
    match named.path.pop() {
        Some(last) if named.path == folder.path => Named::Inside(last),
        _ => Named::Elsewhere,
    }
}

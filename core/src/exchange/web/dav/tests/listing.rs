//! Listings: the examples of RFC 4918, and what a hostile server may name.

use proptest::prelude::*;

use super::super::propfind;
use super::{file, folder, multistatus, response};
use crate::exchange::web::MAX_NAMES;
use crate::exchange::web::address::Address;
use crate::exchange::web::operation::Listing;
use crate::exchange::web::tests::LANE;

fn read(body: &str) -> Listing {
    propfind::read(body.as_bytes(), &folder(), None).unwrap()
}

/// RFC 4918, section 9.1.5, "Using so-called 'allprop'", without its locks.
#[test]
fn the_rfcs_listing_of_a_folder_is_read() {
    let body = r#"<?xml version="1.0" encoding="utf-8" ?>
   <D:multistatus xmlns:D="DAV:">
     <D:response>
       <D:href>/container/</D:href>
       <D:propstat>
         <D:prop xmlns:R="http://ns.example.com/boxschema/">
           <R:bigbox><R:BoxType>Box type A</R:BoxType></R:bigbox>
           <R:author><R:Name>Hadrian</R:Name></R:author>
           <D:creationdate>1997-12-01T17:42:21-08:00</D:creationdate>
           <D:displayname>Example collection</D:displayname>
           <D:resourcetype><D:collection/></D:resourcetype>
         </D:prop>
         <D:status>HTTP/1.1 200 OK</D:status>
       </D:propstat>
     </D:response>
     <D:response>
       <D:href>/container/front.html</D:href>
       <D:propstat>
         <D:prop xmlns:R="http://ns.example.com/boxschema/">
           <R:bigbox><R:BoxType>Box type B</R:BoxType></R:bigbox>
           <D:creationdate>1997-12-01T18:27:21-08:00</D:creationdate>
           <D:displayname>Example HTML resource</D:displayname>
           <D:getcontentlength>4525</D:getcontentlength>
           <D:getcontenttype>text/html</D:getcontenttype>
           <D:getetag>"zzyzx"</D:getetag>
           <D:getlastmodified>Mon, 12 Jan 1998 09:25:56 GMT</D:getlastmodified>
           <D:resourcetype/>
         </D:prop>
         <D:status>HTTP/1.1 200 OK</D:status>
       </D:propstat>
     </D:response>
   </D:multistatus>"#;
    let container = Address::parse("http://www.example.com/container/").unwrap();
    let listing = propfind::read(body.as_bytes(), &container, None).unwrap();
    let files = vec![file("front.html", 4_525)];
    assert_eq!(listing, Listing { files, whole: true, ..Listing::default() });
}

/// RFC 4918, section 9.1.3, "Retrieving Named Properties": what stands under 403 does not count.
#[test]
fn the_rfcs_properties_that_are_refused_do_not_count() {
    let body = r#"<?xml version="1.0" encoding="utf-8" ?>
   <D:multistatus xmlns:D="DAV:">
     <D:response xmlns:R="http://ns.example.com/boxschema/">
       <D:href>http://www.example.com/file</D:href>
       <D:propstat>
         <D:prop>
           <R:bigbox><R:BoxType>Box type A</R:BoxType></R:bigbox>
           <R:author><R:Name>J.J. Johnson</R:Name></R:author>
         </D:prop>
         <D:status>HTTP/1.1 200 OK</D:status>
       </D:propstat>
       <D:propstat>
         <D:prop><D:getcontentlength>7</D:getcontentlength><D:resourcetype><D:collection/></D:resourcetype></D:prop>
         <D:status>HTTP/1.1 403 Forbidden</D:status>
         <D:responsedescription> The user does not have access to the DingALing property.
         </D:responsedescription>
       </D:propstat>
     </D:response>
     <D:responsedescription> There has been an access violation error.
     </D:responsedescription>
   </D:multistatus>"#;
    let host = Address::parse("http://www.example.com/").unwrap();
    let listing = propfind::read(body.as_bytes(), &host, None).unwrap();
    assert_eq!(listing.files, [file("file", 0)]);
}

#[test]
fn only_what_lies_in_the_folder_is_given_out_and_only_its_last_part() {
    let lane = format!("/crew/{LANE}/");
    let long = format!("/crew/{}", "a".repeat(2_000));
    let hrefs = [
        "/crew/",
        &lane,
        "http://files.example.org:8080/crew/by-another-port.leaf",
        "/crew/a%20b.leaf",
        "relative.leaf",
        // From here on none is given out.
        "https://evil.example/crew/x.leaf",
        "//evil.example/crew/x.leaf",
        "/crew/../x.leaf",
        "/crew/%2e%2e/x.leaf",
        "/crew/..%2fx.leaf",
        "/crew/a%5cb.leaf",
        "/crew/a%00.leaf",
        "/crew/%zz.leaf",
        "/crew/%ff.leaf",
        "/crew/a/b.leaf",
        "/other/x.leaf",
        "/crew/x.leaf?download",
        "https://ana@files.example.org/crew/x.leaf",
        "",
        &long,
    ];
    let folder = "<D:resourcetype><D:collection/></D:resourcetype>";
    let responses: String =
        hrefs.iter().map(|href| response(href, if *href == lane { folder } else { "" })).collect();
    let listing = read(&multistatus(&responses));
    assert_eq!(listing.folders, [LANE]);
    let names: Vec<_> = listing.files.iter().map(|file| file.name.as_str()).collect();
    assert_eq!(names, ["a b.leaf", "by-another-port.leaf", "relative.leaf"]);
    assert_eq!(listing.refused, 15 - 1, "the empty one is the folder itself");
    assert!(listing.whole);
}

#[test]
fn a_listing_begins_after_a_name_and_names_nothing_twice() {
    let names = ["c", "a", "b", "b", "d"];
    let responses: String = names.iter().map(|name| response(name, "")).collect();
    let body = multistatus(&responses);
    let listing = propfind::read(body.as_bytes(), &folder(), Some("a")).unwrap();
    assert_eq!(listing.files, [file("b", 0), file("c", 0), file("d", 0)]);
}

#[test]
fn a_folder_with_too_many_names_is_read_in_parts() {
    let responses: String = (0..MAX_NAMES + 5)
        .map(|number| format!("<response><href>{number:06}</href></response>"))
        .collect();
    let body = format!("<multistatus>{responses}</multistatus>");
    let listing = propfind::read(body.as_bytes(), &folder(), None).unwrap();
    assert_eq!((listing.files.len(), listing.whole), (MAX_NAMES, false));
    let last = &listing.files[MAX_NAMES - 1].name;
    let rest = propfind::read(body.as_bytes(), &folder(), Some(last)).unwrap();
    assert_eq!((rest.files.len(), rest.whole), (5, true));
}

fn is_harmless(listing: &Listing) -> bool {
    let names = listing.folders.iter().chain(listing.files.iter().map(|file| &file.name));
    let leads_away = |letter: char| letter == '/' || letter == '\\' || letter == '\0';
    names
        .clone()
        .all(|name| !name.is_empty() && name != "." && name != ".." && !name.contains(leads_away))
        && names.count() <= MAX_NAMES
}

proptest! {
    #[test]
    fn no_body_makes_the_reader_panic(body: Vec<u8>) {
        if let Ok(listing) = propfind::read(&body, &folder(), None) {
            prop_assert!(is_harmless(&listing));
        }
    }

    #[test]
    fn no_href_gives_out_a_name_that_leads_elsewhere(
        hrefs in prop::collection::vec(
            prop_oneof![
                "[a-c./%2eEfF5cC0\\\\:?@]{0,12}".prop_map(|end| format!("/crew/{end}")),
                "[a-c./%2eEfF5cC0\\\\:?@]{0,12}",
                any::<String>().prop_map(|text| text.replace(['<', '&'], "")),
            ],
            0..8,
        ),
    ) {
        let responses: String = hrefs.iter().map(|href| response(href, "")).collect();
        if let Ok(listing) = propfind::read(multistatus(&responses).as_bytes(), &folder(), None) {
            prop_assert!(is_harmless(&listing), "{listing:?}");
        }
    }

    #[test]
    fn a_damaged_listing_is_read_or_refused(
        at in 0.0..1.0_f64, byte: u8, cut in 0.0..1.0_f64,
    ) {
        let whole = multistatus(&(response("/crew/", "") + &response("/crew/a.leaf", "")));
        let mut body = whole.into_bytes();
        let index = (at * body.len() as f64) as usize;
        body[index] = byte;
        body.truncate((cut * 2.0 * body.len() as f64) as usize);
        if let Ok(listing) = propfind::read(&body, &folder(), None) {
            prop_assert!(is_harmless(&listing));
        }
    }
}

//! A server that is to be kept as a carrier: of which kind it is, and what that kind needs.

use super::act::PageAct;
use super::record::{PageField, PageKey, PageRow, PageScreen};
use super::rows::headed;
use crate::exchange::web::{NO_REGION, ServerKind};
use crate::say::page as say;

/// The form for a server. What stands as its address outlives another choice; nothing else that was typed does, so that no
/// password stands where it can be read.
pub(crate) fn page(kind: ServerKind, address: String) -> PageScreen {
    let choice = |title: &str, text: &str, one| {
        PageRow::choice(title, kind == one, PageAct::ServerKind { kind: one }).says(text)
    };
    let kinds = vec![
        choice(say::webdav(), say::webdav_is(), ServerKind::WebDav),
        choice(say::s3(), say::s3_is(), ServerKind::S3),
    ];
    let typed = |label: &str| PageField::empty(label);
    let secret = |label: &str| PageField { secret: true, ..typed(label) };
    let optional =
        |label: &str, text: &str| PageField { optional: true, text: text.into(), ..typed(label) };
    let address = PageField { text: address, ..typed(say::address()) };
    let (needs, fields) = match kind {
        ServerKind::WebDav => {
            (say::webdav_needs(), vec![address, typed(say::user()), secret(say::password())])
        }
        ServerKind::S3 => (
            say::s3_needs(),
            vec![
                address,
                typed(say::bucket()),
                optional(say::bucket_region(), NO_REGION),
                optional(say::bucket_folder(), ""),
                typed(say::key_id()),
                secret(say::secret_key()),
            ],
        ),
    };
    PageScreen {
        choices: headed(kinds, say::server_kind()),
        said: vec![needs.to_owned(), say::server_sees().to_owned()],
        fields,
        key: Some(PageKey::saves(say::keep_server(), PageAct::KeepServer { kind }).once_typed()),
        ..PageScreen::titled(say::add_server())
    }
}

//! What Apache and nginx say when their settings forbid something, and what is made of it.

use std::fs::{self, Permissions};
use std::os::unix::fs::PermissionsExt;

use holdfast_core::exchange::web::WebFault;

use crate::faults::{at, fault};
use crate::server::{LANE, LEAF, Server};
use crate::servers::{APACHE, NGINX};

fn make(server: &Server, folder: &str) {
    let path = server.files().parent().unwrap().join(folder);
    fs::create_dir_all(&path).unwrap();
    fs::set_permissions(&path, Permissions::from_mode(0o777)).unwrap();
}

#[test]
fn a_share_that_may_only_be_read_is_called_so() {
    for kind in [APACHE, NGINX] {
        let server = Server::start(kind);
        make(&server, "readonly");
        let line = at(&server, "readonly");
        assert_eq!(line.list(None, None).unwrap().files.len(), 0, "{}", kind.name);
        let said = fault(line.put(LANE, LEAF, b"x".to_vec()), kind.name);
        assert!(matches!(said, WebFault::ReadOnly { .. }), "{}: {said:?}", kind.name);
    }
}

#[test]
fn a_limit_for_uploads_and_a_full_disk_are_told_apart() {
    for kind in [APACHE, NGINX] {
        let server = Server::start(kind);
        make(&server, "small");
        let said = fault(at(&server, "small").put(LANE, LEAF, vec![0; 5_000]), kind.name);
        assert!(
            matches!(said, WebFault::UploadLimit { bytes: 5_000, .. }),
            "{}: {said:?}",
            kind.name
        );
    }
    let server = Server::start(NGINX);
    make(&server, "full");
    let said = fault(at(&server, "full").put(LANE, LEAF, vec![0; 5_000]), "nginx");
    assert!(matches!(said, WebFault::Full { .. }), "{said:?}");
}

#[test]
fn a_carrier_that_has_moved_says_where_to() {
    let server = Server::start(NGINX);
    let line = at(&server, "old");
    let to = format!("http://localhost:{}/crew/", server.port);
    for said in
        [fault(line.list(None, None), "nginx"), fault(line.put(LANE, LEAF, b"x".to_vec()), "nginx")]
    {
        assert!(matches!(&said, WebFault::Moved { to: named, .. } if *named == to), "{said:?}");
    }
    assert!(fs::read_dir(server.files()).unwrap().next().is_none());
}

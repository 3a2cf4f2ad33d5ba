//! What a client leaves that writes straight under a file's name, when the server dies: the check in `killed.rs` sees
//! what ours avoids.

use std::io::Write;
use std::net::{TcpListener, TcpStream};
use std::thread;

use crate::killed::passing;
use crate::server::{LEAF, PASSWORD, Server, USER, free_port};
use crate::servers::WSGIDAV;

#[test]
fn written_straight_under_its_name_half_a_file_stays() {
    let mut server = Server::start(WSGIDAV);
    let port = free_port();
    let listener = TcpListener::bind(("127.0.0.1", port)).unwrap();
    let to = server.port;
    let path = server.files().join(LEAF);
    thread::scope(|scope| {
        let server = &mut server;
        scope.spawn(move || passing(listener, to, 1_500_000, || server.kill()));
        let mut straight = TcpStream::connect(("127.0.0.1", port)).unwrap();
        let signed_in = data_encoding::BASE64.encode(format!("{USER}:{PASSWORD}").as_bytes());
        let head = format!(
            "PUT /crew/{LEAF} HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Basic {signed_in}\r\n\
             Content-Length: 3000000\r\n\r\n"
        );
        straight.write_all(head.as_bytes()).unwrap();
        // Whoever is let go of while writing hears of it.
        let _ = straight.write_all(&vec![0x37; 3_000_000]);
    });
    let half = std::fs::metadata(path).unwrap().len();
    println!("WsgiDAV: {half} of 3,000,000 bytes under the file's own name");
    assert!(half > 0 && half < 3_000_000);
}

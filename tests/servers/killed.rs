//! A server that dies while a file is on its way.

use std::io::{Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::thread;

use carry::Carried;

use crate::curl;
use crate::server::{LANE, LEAF, PASSWORD, Server, free_port, open};
use crate::servers::ALL;

/// Passes so many bytes on to a server, and its answers back; then calls `end` and lets go of both.
pub(crate) fn passing(listener: TcpListener, to: u16, bytes: usize, end: impl FnOnce()) {
    let mut left = bytes;
    let mut part = [0; 16 * 1024];
    let (mut from, _) = listener.accept().unwrap();
    let mut server = TcpStream::connect(("127.0.0.1", to)).unwrap();
    drop(listener);
    let (mut answers, mut back) = (server.try_clone().unwrap(), from.try_clone().unwrap());
    thread::spawn(move || std::io::copy(&mut answers, &mut back));
    while left > 0 {
        let most = left.min(part.len());
        let read = from.read(&mut part[..most]).unwrap();
        assert!(read > 0, "the file is shorter than it should be");
        server.write_all(&part[..read]).unwrap();
        left -= read;
    }
    // Long enough for the server to take in what was passed on.
    thread::sleep(std::time::Duration::from_millis(300));
    end();
    let _ = from.shutdown(Shutdown::Both);
}

#[test]
fn a_server_killed_while_a_file_arrives_keeps_no_half_of_it_under_its_name() {
    for kind in ALL {
        let mut server = Server::start(kind);
        let content = vec![0x37; 3 * 1024 * 1024];
        // The lane's folder is there already, and hardly anything is sent before the file.
        assert!(server.line().put(LANE, "one-before.leaf", b"x".to_vec()).unwrap());
        let port = free_port();
        let listener = TcpListener::bind(("127.0.0.1", port)).unwrap();
        let carrier = server.carrier_at(port, PASSWORD);
        let to = server.port;
        let cut = thread::scope(|scope| {
            let server = &mut server;
            scope.spawn(move || passing(listener, to, 1_500_000, || server.kill()));
            open(&carrier).put(LANE, LEAF, content.clone())
        });
        // It is tried again, and by then nothing listens any more.
        assert!(matches!(cut, Err(Carried::Offline(_))), "{}: {cut:?}", kind.name);
        // What lies on disk of a server that keeps files otherwise shows once it runs again.
        assert!(!server.files().join(LANE).join(LEAF).exists(), "{}", kind.name);

        server.start_again();
        let line = server.line();
        assert_eq!(line.get(LANE, LEAF).unwrap(), None, "{}", kind.name);
        // What is left over is hidden, and can be taken away.
        for file in line.list(Some(LANE), None).unwrap().files {
            assert_ne!(file.name, LEAF, "{}", kind.name);
            if file.name.starts_with('.') {
                println!("{}: left over: {} bytes, {}", kind.name, file.bytes, file.name);
                assert!(file.bytes < content.len() as u64, "{}", kind.name);
            }
            if file.name.ends_with(".tmp") {
                assert!(line.delete(LANE, &file.name).unwrap(), "{}", kind.name);
            }
        }
        assert!(line.put(LANE, LEAF, content.clone()).unwrap(), "{}", kind.name);
        curl::sees(&server, LANE, LEAF, &content);
    }
}

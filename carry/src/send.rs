//! Sends one request and brings its answer, by `ureq`.

use std::io::{ErrorKind, Read};
use std::net::ToSocketAddrs;
use std::sync::Arc;
use std::time::Duration;

use holdfast_core::exchange::web::{HttpAnswer, HttpRequest};
use rustls::crypto::ring;
use ureq::http::{self, HeaderValue, Response};
use ureq::tls::{RootCerts, TlsConfig};
use ureq::{Agent, Body, Error, Timeout};

/// Why there is no answer.
#[derive(Debug)]
pub(crate) enum Unsent {
    /// No way to the server: no network, no such host, nothing that listens.
    Offline,
    /// It broke on the way, or took too long.
    Interrupted,
    /// The server is not trusted; what the verifier said.
    Certificate(String),
}

/// What sends requests, and keeps connections open between them.
#[derive(Debug)]
pub(crate) struct Sender {
    agent: Agent,
    direct: Agent,
}

impl Sender {
    pub(crate) fn new() -> Sender {
        Sender { agent: agent(false), direct: agent(true) }
    }

    /// Sends a request and reads its answer, at most one byte more than is of use.
    pub(crate) fn send(&self, request: &HttpRequest) -> Result<HttpAnswer, Unsent> {
        let mut made = http::Request::builder().method(request.method.as_str()).uri(&request.url);
        for (name, value) in &request.headers {
            made = made.header(name, value);
        }
        // Marked, so that nothing that logs a request shows it.
        if let Ok(mut authorization) = HeaderValue::from_str(request.authorization.expose()) {
            authorization.set_sensitive(true);
            made = made.header(http::header::AUTHORIZATION, authorization);
        }
        // What is not encrypted goes straight to its neighbour, through nobody's hands.
        let is_plain = request.url.starts_with("http://");
        let agent = if is_plain { &self.direct } else { &self.agent };
        let answer = if request.method.has_body() {
            made.body(request.body.as_slice()).map_err(Error::from).and_then(|made| agent.run(made))
        } else {
            made.body(()).map_err(Error::from).and_then(|made| agent.run(made))
        };
        let answer = answer.map_err(|error| match unsent(&error) {
            // A name that nobody knows just now looks like any other error.
            Unsent::Interrupted if !is_known(&request.url) => Unsent::Offline,
            unsent => unsent,
        });
        let (head, body) = answer?.into_parts();
        read(Response::from_parts(head, body), request.largest)
    }
}

fn agent(direct: bool) -> Agent {
    let tls = TlsConfig::builder()
        .root_certs(RootCerts::PlatformVerifier)
        .unversioned_rustls_crypto_provider(Arc::new(ring::default_provider()))
        .build();
    let seconds = |seconds| Some(Duration::from_secs(seconds));
    let config = Agent::config_builder()
        .tls_config(tls)
        // Where an answer sends on to is for the core to judge.
        .max_redirects(0)
        .http_status_as_error(false)
        .allow_non_standard_methods(true)
        .user_agent("holdfast")
        .timeout_resolve(seconds(20))
        .timeout_connect(seconds(20))
        .timeout_recv_response(seconds(90))
        .timeout_per_read(seconds(60))
        .timeout_per_write(seconds(60))
        .timeout_global(seconds(600));
    if direct { config.proxy(None).build().new_agent() } else { config.build().new_agent() }
}

fn read(answer: Response<Body>, largest: u64) -> Result<HttpAnswer, Unsent> {
    let (head, body) = answer.into_parts();
    let headers = head.headers.iter();
    let headers = headers.filter_map(|(name, value)| {
        Some((name.as_str().to_owned(), value.to_str().ok()?.to_owned()))
    });
    let headers = headers.collect();
    let mut content = Vec::new();
    let mut reader = body.into_reader().take(largest.saturating_add(1));
    reader.read_to_end(&mut content).map_err(|_| Unsent::Interrupted)?;
    Ok(HttpAnswer { status: head.status.as_u16(), headers, body: content })
}

/// False when the system knows no address of a server: without a network it knows none.
fn is_known(url: &str) -> bool {
    let uri: Option<http::Uri> = url.parse().ok();
    let host = uri.as_ref().and_then(http::Uri::host);
    let host = host.map(|host| host.trim_start_matches('[').trim_end_matches(']'));
    host.is_none_or(|host| (host, 0).to_socket_addrs().is_ok())
}

fn unsent(error: &Error) -> Unsent {
    match error {
        Error::HostNotFound
        | Error::ConnectionFailed
        | Error::Timeout(Timeout::Resolve | Timeout::Connect) => Unsent::Offline,
        Error::Rustls(error) => Unsent::Certificate(error.to_string()),
        Error::Tls(said) => Unsent::Certificate((*said).to_owned()),
        Error::Io(error) => {
            let inner = error.get_ref().and_then(|inner| inner.downcast_ref::<rustls::Error>());
            match (inner, error.kind()) {
                (Some(inner), _) => Unsent::Certificate(inner.to_string()),
                (
                    None,
                    ErrorKind::ConnectionRefused
                    | ErrorKind::NetworkUnreachable
                    | ErrorKind::HostUnreachable
                    | ErrorKind::NetworkDown
                    | ErrorKind::AddrNotAvailable,
                ) => Unsent::Offline,
                _ => Unsent::Interrupted,
            }
        }
        _ => Unsent::Interrupted,
    }
}

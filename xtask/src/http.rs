//! As much of HTTP as a browser on this machine needs: one request a connection, GET and HEAD.
//!
//! A thread for each connection: browsers open connections before they need them and leave them
//! idle, and requests must not wait behind those.

use std::io::{self, Read, Write};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

use anyhow::{Result, bail};

/// The longest head of a request, in bytes.
const HEAD_LIMIT: usize = 16 * 1024;
const MAX_HEADERS: usize = 64;
const PATIENCE: Duration = Duration::from_secs(30);

/// What a browser asks for.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Request {
    /// The method, in capitals.
    pub(crate) method: String,
    /// The path and what follows it.
    pub(crate) target: String,
    /// The `Accept-Encoding` header, or nothing.
    pub(crate) accept_encoding: String,
}

/// What it gets.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Answer {
    /// Status code and reason.
    pub(crate) status: &'static str,
    /// Headers beside `Content-Length` and `Connection`.
    pub(crate) headers: Vec<(&'static str, String)>,
    /// The content.
    pub(crate) body: Vec<u8>,
}

/// Takes a port of 127.0.0.1; 0 takes any free one.
pub(crate) fn listen(port: u16) -> Result<TcpListener> {
    match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
        Ok(listener) => Ok(listener),
        Err(error) if error.kind() == io::ErrorKind::AddrInUse => {
            bail!("port {port} is taken by another program: choose one with --port, or 0 for any")
        }
        Err(error) => bail!("cannot serve on port {port}: {error}"),
    }
}

/// Answers until the program ends. Gives the address.
pub(crate) fn start(
    listener: TcpListener,
    answer: impl Fn(&Request) -> Answer + Send + Sync + 'static,
) -> Result<SocketAddr> {
    let address = listener.local_addr()?;
    let answer = Arc::new(answer);
    thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let answer = Arc::clone(&answer);
            // A browser that goes away in the middle is its own affair.
            thread::spawn(move || connection(stream, &*answer));
        }
    });
    Ok(address)
}

fn connection(mut stream: TcpStream, answer: &dyn Fn(&Request) -> Answer) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut head = Vec::new();
    let mut buffer = [0; 4096];
    loop {
        let count = stream.read(&mut buffer)?;
        if count == 0 {
            return Ok(());
        }
        head.extend_from_slice(&buffer[..count]);
        match parse(&head) {
            Ok(None) if head.len() < HEAD_LIMIT => {}
            Ok(Some(request)) => {
                let with_body = request.method != "HEAD";
                write(&mut stream, &answer(&request), with_body)?;
                return stream.shutdown(Shutdown::Both);
            }
            Ok(None) | Err(_) => {
                let refusal = Answer {
                    status: "400 Bad Request",
                    headers: Vec::new(),
                    body: Vec::new(),
                };
                return write(&mut stream, &refusal, true);
            }
        }
    }
}

/// The request, when its head is complete.
fn parse(head: &[u8]) -> Result<Option<Request>, httparse::Error> {
    let mut headers = [httparse::EMPTY_HEADER; MAX_HEADERS];
    let mut parsed = httparse::Request::new(&mut headers);
    if parsed.parse(head)?.is_partial() {
        return Ok(None);
    }
    let accept_encoding = parsed
        .headers
        .iter()
        .find(|header| header.name.eq_ignore_ascii_case("Accept-Encoding"))
        .map_or(Default::default(), |header| {
            String::from_utf8_lossy(header.value).into_owned()
        });
    Ok(Some(Request {
        method: parsed.method.unwrap_or_default().to_owned(),
        target: parsed.path.unwrap_or_default().to_owned(),
        accept_encoding,
    }))
}

fn write(stream: &mut impl Write, answer: &Answer, with_body: bool) -> io::Result<()> {
    let mut head = format!("HTTP/1.1 {}\r\n", answer.status);
    for (name, value) in &answer.headers {
        head.push_str(&format!("{name}: {value}\r\n"));
    }
    head.push_str(&format!(
        "Content-Length: {}\r\nConnection: close\r\n\r\n",
        answer.body.len()
    ));
    stream.write_all(head.as_bytes())?;
    if with_body {
        stream.write_all(&answer.body)?;
    }
    stream.flush()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn echo(request: &Request) -> Answer {
        Answer {
            status: "200 OK",
            headers: vec![("X-Encoding", request.accept_encoding.clone())],
            body: request.target.clone().into_bytes(),
        }
    }

    fn ask(address: SocketAddr, request: &str) -> String {
        let mut stream = TcpStream::connect(address).unwrap();
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = Vec::new();
        // A refused request may end in a reset.
        let _ = stream.read_to_end(&mut answer);
        String::from_utf8(answer).unwrap()
    }

    #[test]
    fn a_request_is_answered_behind_idle_connections() {
        let address = start(listen(0).unwrap(), echo).unwrap();
        let idle: Vec<_> = (0..40)
            .map(|_| TcpStream::connect(address).unwrap())
            .collect();
        let answer = ask(address, "GET /a?b HTTP/1.1\r\naccept-encoding: br\r\n\r\n");
        assert_eq!(
            answer,
            "HTTP/1.1 200 OK\r\nX-Encoding: br\r\nContent-Length: 4\r\nConnection: close\r\n\r\n/a?b"
        );
        drop(idle);
    }

    #[test]
    fn a_head_request_gets_no_body() {
        let address = start(listen(0).unwrap(), echo).unwrap();
        let answer = ask(address, "HEAD /abc HTTP/1.1\r\n\r\n");
        assert!(answer.contains("Content-Length: 4\r\n"));
        assert!(answer.ends_with("\r\n\r\n"));
    }

    #[test]
    fn what_is_not_http_is_refused() {
        let address = start(listen(0).unwrap(), echo).unwrap();
        assert!(ask(address, "\u{1}\u{2}\r\n\r\n").starts_with("HTTP/1.1 400"));
        let endless = format!("GET / HTTP/1.1\r\nx: {}", "y".repeat(HEAD_LIMIT));
        assert!(!ask(address, &endless).contains("200 OK"));
    }

    #[test]
    fn a_taken_port_is_named() {
        let listener = listen(0).unwrap();
        let taken = listener.local_addr().unwrap().port();
        let error = listen(taken).unwrap_err().to_string();
        assert!(error.contains(&format!("port {taken} is taken")), "{error}");
    }
}

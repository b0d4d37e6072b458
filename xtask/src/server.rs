//! A static server on this machine.

use std::io::Cursor;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::{fs, thread};

use anyhow::{Result, bail};
use percent_encoding::percent_decode_str;
use tiny_http::{Header, Method, Request, Response, Server};

use crate::bundle::ASSETS;
use crate::compress::ENCODINGS;
use crate::live::Live;

type Answer = Response<Cursor<Vec<u8>>>;

/// A directory under a path of the server.
#[derive(Debug)]
pub(crate) struct Site {
    /// The directory.
    pub(crate) dir: PathBuf,
    /// Begins and ends with `/`.
    pub(crate) prefix: String,
    /// Reloads the page when the directory has changed.
    pub(crate) live: Option<Arc<Live>>,
}

/// A server that answers until the program ends.
#[derive(Debug)]
pub(crate) struct Running {
    address: SocketAddr,
}

impl Running {
    /// The address of a path on this server.
    pub(crate) fn url(&self, prefix: &str) -> String {
        format!("http://{}{prefix}", self.address)
    }
}

/// Starts to serve on a port of 127.0.0.1; port 0 takes any free one.
pub(crate) fn start(port: u16, sites: Vec<Site>) -> Result<Running> {
    let wanted = SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), port);
    let server = match Server::http(wanted) {
        Ok(server) => Arc::new(server),
        Err(error) => bail!(
            "cannot serve on {wanted}: {error}. If another program uses port {port}, \
             choose one with --port"
        ),
    };
    let address = server.server_addr().to_ip().unwrap_or(wanted);
    let sites = Arc::new(sites);
    for _ in 0..4 {
        let (server, sites) = (Arc::clone(&server), Arc::clone(&sites));
        thread::spawn(move || {
            while let Ok(request) = server.recv() {
                let answer = answer(&sites, &request);
                // The browser may have gone; that is its own affair.
                let _ = request.respond(answer);
            }
        });
    }
    Ok(Running { address })
}

fn answer(sites: &[Site], request: &Request) -> Answer {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return plain(405, "only GET and HEAD are answered");
    }
    let path = request.url().split(['?', '#']).next().unwrap_or_default();
    let found = sites
        .iter()
        .find_map(|site| Some((site, path.strip_prefix(site.prefix.as_str())?)));
    let Some((site, path)) = found else {
        let folder = format!("{path}/");
        return if sites.iter().any(|site| site.prefix == folder) {
            plain(308, "").with_header(header("Location", &folder))
        } else {
            plain(404, "nothing is served here")
        };
    };
    if let Some(live) = &site.live
        && let Some((mime, content)) = live.answer(path)
    {
        return ok(content, mime, "no-store");
    }
    match local_path(path) {
        Some(local) => file(site, &local, accepted(request)),
        None => plain(404, "not a path of this site"),
    }
}

/// The path below the site for the path of an address, when it is one: no part may lead up,
/// to a hidden file or to another disk.
fn local_path(url_path: &str) -> Option<String> {
    let decoded = percent_decode_str(url_path).decode_utf8().ok()?;
    if decoded.is_empty() {
        return Some("index.html".to_owned());
    }
    let safe = |part: &str| {
        !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':', '\0'])
    };
    decoded
        .split('/')
        .all(safe)
        .then(|| decoded.clone().into_owned())
}

fn file(site: &Site, local: &str, accepted: &str) -> Answer {
    let mime = mime_type(local);
    let cache = if local.starts_with(&format!("{ASSETS}/")) {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    if let Some(live) = &site.live
        && mime.starts_with("text/html")
    {
        return match read_inside(&site.dir, local) {
            Some(page) => ok(live.insert_script(page), &mime, cache),
            None => plain(404, "no such file"),
        };
    }
    for (ending, encoding) in ENCODINGS {
        if accepts(accepted, encoding)
            && let Some(content) = read_inside(&site.dir, &format!("{local}.{ending}"))
        {
            return ok(content, &mime, cache).with_header(header("Content-Encoding", encoding));
        }
    }
    match read_inside(&site.dir, local) {
        Some(content) => ok(content, &mime, cache),
        None => plain(404, "no such file"),
    }
}

/// Reads a file that lies in the directory, also after links are followed.
fn read_inside(dir: &Path, local: &str) -> Option<Vec<u8>> {
    let path = dir.join(local).canonicalize().ok()?;
    if !path.starts_with(dir.canonicalize().ok()?) || !path.is_file() {
        return None;
    }
    fs::read(path).ok()
}

/// The media type of a file, with the encoding of text.
fn mime_type(path: &str) -> String {
    let mime = mime_guess::from_path(path).first_or_octet_stream();
    if mime.type_() == mime_guess::mime::TEXT {
        format!("{mime}; charset=utf-8")
    } else {
        mime.to_string()
    }
}

fn accepted(request: &Request) -> &str {
    request
        .headers()
        .iter()
        .find(|header| header.field.equiv("Accept-Encoding"))
        .map_or("", |header| header.value.as_str())
}

/// Whether an `Accept-Encoding` header allows an encoding.
fn accepts(accepted: &str, encoding: &str) -> bool {
    accepted.split(',').any(|item| {
        let mut parts = item.split(';').map(str::trim);
        let named = parts
            .next()
            .is_some_and(|name| name.eq_ignore_ascii_case(encoding));
        let weight = parts
            .find_map(|part| part.strip_prefix("q="))
            .map_or(Some(1.0), |weight| weight.parse::<f64>().ok());
        named && weight.is_some_and(|weight| weight > 0.0)
    })
}

fn ok(content: Vec<u8>, mime: &str, cache: &str) -> Answer {
    respond(200, content, mime)
        .with_header(header("Cache-Control", cache))
        .with_header(header("Vary", "Accept-Encoding"))
}

fn plain(status: u16, message: &str) -> Answer {
    respond(
        status,
        message.as_bytes().to_vec(),
        "text/plain; charset=utf-8",
    )
}

fn respond(status: u16, content: Vec<u8>, mime: &str) -> Answer {
    Response::from_data(content)
        .with_status_code(status)
        // Always with its length, never in chunks.
        .with_chunked_threshold(usize::MAX)
        .with_header(header("Content-Type", mime))
        .with_header(header("X-Content-Type-Options", "nosniff"))
}

fn header(name: &str, value: &str) -> Header {
    Header::from_bytes(name, value).expect("header names and values are ASCII")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_stands_for_its_directory() {
        assert_eq!(local_path("").as_deref(), Some("index.html"));
        assert_eq!(local_path("assets/a.js").as_deref(), Some("assets/a.js"));
        assert_eq!(local_path("a%20b.txt").as_deref(), Some("a b.txt"));
    }

    #[test]
    fn no_path_leads_out_of_the_site() {
        for path in [
            "../Cargo.toml",
            "assets/../../Cargo.toml",
            "%2e%2e/Cargo.toml",
            "..%2fCargo.toml",
            "..%5cCargo.toml",
            "/etc/passwd",
            "%2fetc/passwd",
            "c:/windows",
            "a//b",
            ".git/config",
            "a%00",
            "%ff",
        ] {
            assert_eq!(local_path(path), None, "{path}");
        }
    }

    #[test]
    #[cfg(unix)]
    fn no_link_leads_out_of_the_site() {
        let dir = std::env::temp_dir().join(format!("recalesce-link-{}", std::process::id()));
        fs::create_dir_all(&dir).unwrap();
        std::os::unix::fs::symlink("/etc/hostname", dir.join("link")).unwrap();
        fs::write(dir.join("own"), "own").unwrap();
        let (link, own) = (read_inside(&dir, "link"), read_inside(&dir, "own"));
        fs::remove_dir_all(&dir).unwrap();
        assert_eq!(link, None);
        assert_eq!(own.as_deref(), Some(&b"own"[..]));
    }

    #[test]
    fn media_types_are_what_browsers_insist_on() {
        for (path, mime) in [
            ("a.html", "text/html; charset=utf-8"),
            ("a.js", "text/javascript; charset=utf-8"),
            ("a.css", "text/css; charset=utf-8"),
            ("a.wasm", "application/wasm"),
            ("a.woff2", "font/woff2"),
            ("a.svg", "image/svg+xml"),
            ("a.png", "image/png"),
            ("a", "application/octet-stream"),
        ] {
            assert_eq!(mime_type(path), mime);
        }
    }

    #[test]
    fn encodings_are_taken_as_asked() {
        assert!(accepts("gzip, deflate, br", "br"));
        assert!(accepts("gzip;q=0.5", "gzip"));
        assert!(!accepts("gzip;q=0, br", "gzip"));
        assert!(!accepts("", "gzip"));
        assert!(!accepts("x-gzip", "gzip"));
    }
}

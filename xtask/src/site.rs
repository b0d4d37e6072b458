//! A directory of files as a browser sees it.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use percent_encoding::percent_decode_str;

use crate::bundle::ASSETS;
use crate::compress::ENCODINGS;
use crate::http::{Answer, Request};
use crate::live::Live;

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

/// Answers from the first site below whose prefix the request lies.
pub(crate) fn answer(sites: &[Site], request: &Request) -> Answer {
    if !matches!(request.method.as_str(), "GET" | "HEAD") {
        return plain("405 Method Not Allowed", "only GET and HEAD are answered");
    }
    let path = request.target.split(['?', '#']).next().unwrap_or_default();
    let found = sites
        .iter()
        .find_map(|site| Some((site, path.strip_prefix(site.prefix.as_str())?)));
    let Some((site, path)) = found else {
        return plain("404 Not Found", "nothing is served here");
    };
    if let Some(live) = &site.live
        && let Some((mime, content)) = live.answer(path)
    {
        return ok(content, mime, "no-store");
    }
    match local_path(path) {
        Some(local) => file(site, &local, &request.accept_encoding),
        None => plain("404 Not Found", "not a path of this site"),
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
            None => plain("404 Not Found", "no such file"),
        };
    }
    for (ending, encoding) in ENCODINGS {
        if accepts(accepted, encoding)
            && let Some(content) = read_inside(&site.dir, &format!("{local}.{ending}"))
        {
            let mut answer = ok(content, &mime, cache);
            answer
                .headers
                .push(("Content-Encoding", encoding.to_owned()));
            return answer;
        }
    }
    match read_inside(&site.dir, local) {
        Some(content) => ok(content, &mime, cache),
        None => plain("404 Not Found", "no such file"),
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
    let mut answer = respond("200 OK", content, mime);
    answer.headers.push(("Cache-Control", cache.to_owned()));
    answer.headers.push(("Vary", "Accept-Encoding".to_owned()));
    answer
}

fn plain(status: &'static str, message: &str) -> Answer {
    respond(status, message.into(), "text/plain; charset=utf-8")
}

fn respond(status: &'static str, body: Vec<u8>, mime: &str) -> Answer {
    Answer {
        status,
        headers: vec![
            ("Content-Type", mime.to_owned()),
            ("X-Content-Type-Options", "nosniff".to_owned()),
        ],
        body,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(name: &str) -> Site {
        let dir = std::env::temp_dir().join(format!("recalesce-{name}-{}", std::process::id()));
        fs::create_dir_all(dir.join(ASSETS)).unwrap();
        fs::write(dir.join("index.html"), "page").unwrap();
        fs::write(dir.join("assets/a.js"), "plain").unwrap();
        fs::write(dir.join("assets/a.js.gz"), "zipped").unwrap();
        Site {
            dir,
            prefix: "/some/where/".to_owned(),
            live: None,
        }
    }

    fn get(site: &Site, target: &str, accept_encoding: &str) -> Answer {
        let request = Request {
            method: "GET".to_owned(),
            target: target.to_owned(),
            accept_encoding: accept_encoding.to_owned(),
        };
        answer(std::slice::from_ref(site), &request)
    }

    fn header<'a>(answer: &'a Answer, name: &str) -> Option<&'a str> {
        let found = answer.headers.iter().find(|(known, _)| *known == name);
        found.map(|(_, value)| value.as_str())
    }

    #[test]
    fn files_come_compressed_to_those_who_accept_it() {
        let site = site("compressed");
        let zipped = get(&site, "/some/where/assets/a.js?v", "gzip, br");
        let plain = get(&site, "/some/where/assets/a.js", "");
        let page = get(&site, "/some/where/", "gzip, br");
        let elsewhere = get(&site, "/index.html", "");
        fs::remove_dir_all(&site.dir).unwrap();

        assert_eq!(zipped.body, b"zipped");
        assert_eq!(header(&zipped, "Content-Encoding"), Some("gzip"));
        assert!(
            header(&zipped, "Cache-Control")
                .unwrap()
                .contains("immutable")
        );
        assert_eq!(plain.body, b"plain");
        assert_eq!(header(&plain, "Content-Encoding"), None);
        assert_eq!(page.body, b"page");
        assert_eq!(header(&page, "Cache-Control"), Some("no-cache"));
        assert!(elsewhere.status.starts_with("404"));
    }

    #[test]
    fn only_the_development_server_reloads_the_page() {
        let mut site = site("live");
        let published = get(&site, "/some/where/", "");
        site.live = Some(Arc::default());
        let page = get(&site, "/some/where/", "");
        let script = get(&site, "/some/where/-/reload.js", "");
        let worker = get(&site, "/some/where/sw.js", "");
        fs::remove_dir_all(&site.dir).unwrap();

        assert_eq!(published.body, b"page");
        assert!(String::from_utf8(page.body).unwrap().contains("reload.js"));
        assert!(script.status.starts_with("200"));
        let worker = String::from_utf8(worker.body).unwrap();
        assert!(worker.contains("registration.unregister()"));
    }

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
            ("a.webmanifest", "application/manifest+json"),
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

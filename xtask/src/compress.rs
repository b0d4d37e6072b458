//! Compressed forms of the page's files.

use std::io::Write;

use anyhow::Result;

/// How hard to compress.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Effort {
    /// gzip only, in no time: for a page served from this machine.
    Quick,
    /// gzip and brotli as small as they get: for publishing.
    Best,
}

/// The endings of the compressed forms with their names in HTTP, the one to prefer first.
pub(crate) const ENCODINGS: [(&str, &str); 2] = [("br", "br"), ("gz", "gzip")];

/// The compressed forms of a file that are smaller than the file, with their paths.
pub(crate) fn forms(path: &str, content: &[u8], effort: Effort) -> Result<Vec<(String, Vec<u8>)>> {
    if !compressible(path) {
        return Ok(Vec::new());
    }
    let mut forms = Vec::new();
    match effort {
        Effort::Quick => {
            forms.push((
                format!("{path}.gz"),
                gzip(content, flate2::Compression::fast())?,
            ));
        }
        Effort::Best => {
            forms.push((
                format!("{path}.gz"),
                gzip(content, flate2::Compression::best())?,
            ));
            forms.push((format!("{path}.br"), brotli(content)?));
        }
    }
    forms.retain(|(_, compressed)| compressed.len() < content.len());
    Ok(forms)
}

/// The bytes that a browser loads for a file when it accepts gzip alone.
pub(crate) fn gzip_size(path: &str, content: &[u8]) -> Result<usize> {
    if !compressible(path) {
        return Ok(content.len());
    }
    let compressed = gzip(content, flate2::Compression::best())?;
    Ok(compressed.len().min(content.len()))
}

/// Whether a file is of a kind that is not compressed in itself.
fn compressible(path: &str) -> bool {
    let extension = path.rsplit('.').next().unwrap_or_default();
    matches!(
        extension,
        "css" | "csv" | "html" | "js" | "json" | "svg" | "txt" | "wasm" | "webmanifest"
    )
}

fn gzip(content: &[u8], level: flate2::Compression) -> Result<Vec<u8>> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), level);
    encoder.write_all(content)?;
    Ok(encoder.finish()?)
}

fn brotli(content: &[u8]) -> Result<Vec<u8>> {
    let parameters = brotli::enc::BrotliEncoderParams {
        quality: 11,
        size_hint: content.len(),
        ..Default::default()
    };
    let mut compressed = Vec::new();
    brotli::BrotliCompress(&mut &content[..], &mut compressed, &parameters)?;
    Ok(compressed)
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;

    #[test]
    fn both_forms_hold_the_content() {
        let content = b"austenite ".repeat(200);
        let forms = forms("a.css", &content, Effort::Best).unwrap();
        let [(gz_path, gz), (br_path, br)] = &forms[..] else {
            panic!("two forms expected, got {}", forms.len());
        };
        assert_eq!(
            (gz_path.as_str(), br_path.as_str()),
            ("a.css.gz", "a.css.br")
        );
        let mut unzipped = Vec::new();
        flate2::read::GzDecoder::new(&gz[..])
            .read_to_end(&mut unzipped)
            .unwrap();
        assert_eq!(unzipped, content);
        let mut unbrotlied = Vec::new();
        brotli::BrotliDecompress(&mut &br[..], &mut unbrotlied).unwrap();
        assert_eq!(unbrotlied, content);
    }

    #[test]
    fn what_does_not_get_smaller_is_left_out() {
        assert!(forms("a.js", b"1", Effort::Best).unwrap().is_empty());
        let font = b"austenite ".repeat(200);
        assert!(forms("a.woff2", &font, Effort::Best).unwrap().is_empty());
    }
}

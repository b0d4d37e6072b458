//! A route as a short text for the address of the page, and back.
//!
//! The text is the format's version, a full stop, and in base64url what deflate makes of the saved
//! route, with a check sum before it. Deflate is first shown [`SHOWN_BEFORE`], so that a route like
//! most others comes to a few dozen letters, which a QR code holds with large squares. What comes in
//! goes through the reader of files, and is checked as they are.

use super::file::{FORMAT, Kind, ReadError, VERSION, WriteError, read_bench};
use crate::route::{Route, validate};
use base64::Engine as _;
use base64::alphabet::URL_SAFE;
use base64::engine::general_purpose::{GeneralPurpose, NO_PAD};
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};

/// Longest link that is written or read, characters.
pub const LONGEST_LINK: usize = 16_000;
/// Largest saved route in a link, bytes.
const LARGEST_ROUTE_BYTES: usize = 200_000;
/// The version of the format that had the first links.
const FIRST_VERSION: u64 = 5;
/// Bytes of the check sum.
const SUM_BYTES: usize = 4;

/// What deflate is shown before the route: the words of saved routes, the most common last. It is
/// part of the format of links: changed, no link made before it could be read.
const SHOWN_BEFORE: &str = concat!(
    r#"{"own":{"h_w_m2k":[["title":"bath_c":"h_band_factor":"figures":{"nickel_ball_s":"#,
    r#""after_s":"at_c":"end_quench":[{"distance_mm":1.5,"hrc":55.0},{"distance_mm":"#,
    r#""start":"coarse_spheroidised","start":"lamellar_pearlite","start":"fine_pearlite","#,
    r#""start":"as_forged","start":"quenched_and_refined","prior":[{"work":{"kind":"forge","#,
    r#""finish_c":900.0,"heats":2},"temperature_c":1100.0,"time_min":5.0,"cooling":{"way":"#,
    r#""furnace","rate_k_per_h":20.0,"until_c":650.0}},{"work":{"kind":"slow_anneal"},"#,
    r#"{"work":{"kind":"subcritical_anneal"},{"work":{"kind":"stress_relief"},"#,
    r#"{"work":{"kind":"refine"},"temperature_c":800.0,"time_min":5.0,"cooling":{"way":"medium","medium":"air_still"}},"#,
    r#"{"work":{"kind":"normalise"},"temperature_c":870.0,"time_min":10.0,"cooling":{"way":"medium","medium":"air_still"}}],"#,
    r#""section":{"shape":"plate","thickness_mm":3.0},"section":{"shape":"round","diameter_mm":10.0},"#,
    r#""section":{"shape":"square","side_mm":10.0},"grind":"convex","#,
    r#""thermocouple":"type_k_class1","thermocouple":"type_k_class2","furnace_offset_k":-5.0,"#,
    r#""water20","brine10","oil_fast","oil_slow","oil_marq150","salt200_still","then":[{"leave":{"#,
    r#"{"piece":"marking knife","grade":"52100","composition":{"c":1.0,"mn":0.35,"si":0.25,"cr":1.45,"ni":0.0,"#,
    r#""mo":0.0,"v":0.0,"w":0.0,"p":0.0,"s":0.0},"start":"spheroidised","section":{"shape":"blade","edge_mm":0.4,"#,
    r#""spine_mm":4.0,"height_mm":26.0},"furnace_band_k":8.0,"soak":{"temperature_c":830.0,"time_min":12.0},"#,
    r#""quench":{"medium":"oil_medium","agitation":1.2,"air_delay_s":1.0,"end_c":20.0},"#,
    r#""cold":{"temperature_c":-75.0,"time_min":60.0,"delay_min":10.0},"#,
    r#""tempers":[{"temperature_c":190.0,"time_min":60.0},{"temperature_c":190.0,"time_min":60.0}],"#,
    r#""target":{"least_hrc":61.0,"most_hrc":63.0}}"#,
);

const BASE64_URL: GeneralPurpose = GeneralPurpose::new(&URL_SAFE, NO_PAD);

/// Why a link could not be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LinkError {
    /// Longer than any link.
    #[error("The link has {length} characters; at most {LONGEST_LINK} are read.")]
    TooLong {
        /// Its length, bytes.
        length: usize,
    },
    /// Not begun as a link begins.
    #[error("This is no link to a route: it does not begin with the version of the format.")]
    NotOurs,
    /// The link comes from a later program.
    #[error(
        "The link is of version {found}, made by a newer version of this program, which reads up \
         to {VERSION}."
    )]
    Newer {
        /// The version found.
        found: u64,
    },
    /// Letters are missing or changed.
    #[error("The link is damaged or cut short. Copy it again as a whole.")]
    Damaged,
    /// A route that is larger than any.
    #[error("The route in the link is larger than {LARGEST_ROUTE_BYTES} bytes.")]
    TooLarge,
    /// What is in it is no route, or makes no sense.
    #[error(transparent)]
    Route(#[from] ReadError),
}

/// A route as the text of a link.
///
/// # Errors
/// A route that makes no sense, or one so long that its link would not be read.
pub fn write_link(route: &Route) -> Result<String, WriteError> {
    validate(route)?;
    let text = serde_json::to_string(route).map_err(|e| WriteError::Text(e.to_string()))?;
    let mut bytes = check_sum(text.as_bytes()).to_vec();
    bytes.extend(deflated(text.as_bytes()).ok_or_else(|| WriteError::Text("deflate".to_owned()))?);
    let link = format!("{VERSION}.{}", BASE64_URL.encode(bytes));
    if link.len() > LONGEST_LINK || text.len() > LARGEST_ROUTE_BYTES {
        return Err(WriteError::LongLink { length: link.len() });
    }
    Ok(link)
}

/// The route of a link, checked as one of a file.
///
/// # Errors
/// A text that is no link, a damaged link or one of a newer version, and a route that makes no sense.
pub fn read_link(link: &str) -> Result<Route, LinkError> {
    if link.len() > LONGEST_LINK {
        return Err(LinkError::TooLong { length: link.len() });
    }
    let (version, letters) = link.split_once('.').ok_or(LinkError::NotOurs)?;
    let version: u64 = version.parse().map_err(|_| LinkError::NotOurs)?;
    if version > VERSION {
        return Err(LinkError::Newer { found: version });
    }
    if version < FIRST_VERSION {
        return Err(LinkError::NotOurs);
    }
    let bytes = BASE64_URL
        .decode(letters.trim_end())
        .map_err(|_| LinkError::Damaged)?;
    let (sum, packed) = bytes
        .split_at_checked(SUM_BYTES)
        .ok_or(LinkError::Damaged)?;
    let route = inflated(packed)?;
    if sum != check_sum(route.as_bytes()) {
        return Err(LinkError::Damaged);
    }
    // In the envelope of a file, so that each version has one reader for files and links.
    let kind = Kind::Bench.name();
    let file = format!(
        r#"{{"format":"{FORMAT}","version":{version},"kind":"{kind}","routes":[{{"id":1,"name":"","route":{route}}}]}}"#
    );
    Ok(read_bench(&file)?.route)
}

/// FNV-1a: deflate alone would read many a changed letter as another route.
fn check_sum(bytes: &[u8]) -> [u8; SUM_BYTES] {
    bytes
        .iter()
        .fold(0x811c_9dc5_u32, |sum, byte| {
            (sum ^ u32::from(*byte)).wrapping_mul(0x0100_0193)
        })
        .to_be_bytes()
}

/// Deflates after [`SHOWN_BEFORE`], of which nothing goes into the result.
fn deflated(bytes: &[u8]) -> Option<Vec<u8>> {
    const LEVEL: i32 = 9;
    /// Without header and check sum of its own.
    const RAW: i32 = -15;
    let mut compressor = CompressorOxide::new(create_comp_flags_from_zip_params(LEVEL, RAW, 0));
    let shown = SHOWN_BEFORE.as_bytes();
    let mut out = vec![0; 2 * bytes.len().max(shown.len()) + 1024];
    // To a whole byte, so that the rest stands by itself.
    let (_, read, _) = compress(&mut compressor, shown, &mut out, TDEFLFlush::Sync);
    if read != shown.len() {
        return None;
    }
    let (status, _, written) = compress(&mut compressor, bytes, &mut out, TDEFLFlush::Finish);
    out.truncate(written);
    (status == TDEFLStatus::Done).then_some(out)
}

/// Inflates behind [`SHOWN_BEFORE`].
fn inflated(packed: &[u8]) -> Result<String, LinkError> {
    let shown = SHOWN_BEFORE.as_bytes();
    let mut out = shown.to_vec();
    out.resize(shown.len() + LARGEST_ROUTE_BYTES, 0);
    let (status, _, written) = decompress(
        &mut DecompressorOxide::new(),
        packed,
        &mut out,
        shown.len(),
        TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
    );
    match status {
        TINFLStatus::Done => {}
        TINFLStatus::HasMoreOutput => return Err(LinkError::TooLarge),
        _ => return Err(LinkError::Damaged),
    }
    out.truncate(shown.len() + written);
    String::from_utf8(out.split_off(shown.len())).map_err(|_| LinkError::Damaged)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{PriorStep, SlowCooling, Work};

    #[test]
    fn the_example_comes_to_a_short_link_and_back() {
        let link = write_link(&Route::example()).unwrap();
        assert!(link.len() < 60, "{link}");
        assert!(
            link.bytes()
                .all(|b| b.is_ascii_alphanumeric() || b".-_".contains(&b))
        );
        assert_eq!(read_link(&link).unwrap(), Route::example());
    }

    #[test]
    fn a_long_route_still_fits_a_code() {
        let mut route = Route::example();
        route.prior = Work::ALL
            .into_iter()
            .map(|work| PriorStep {
                work,
                temperature_c: 903.0,
                time_min: 7.0,
                cooling: SlowCooling::still_air(),
            })
            .collect();
        let link = write_link(&route).unwrap();
        assert!(link.len() < 300, "{link}");
        assert_eq!(read_link(&link).unwrap(), route);
    }

    #[test]
    fn a_changed_letter_or_a_lost_end_is_told() {
        let link = write_link(&Route::example()).unwrap();
        for end in 0..link.len() {
            assert!(read_link(&link[..end]).is_err(), "{end}");
        }
        for place in 2..link.len() {
            let mut changed = link.clone().into_bytes();
            changed[place] = if changed[place] == b'A' { b'B' } else { b'A' };
            let changed = String::from_utf8(changed).unwrap();
            assert!(read_link(&changed).is_err(), "{changed}");
        }
    }

    fn packed(text: &str) -> String {
        let mut bytes = check_sum(text.as_bytes()).to_vec();
        bytes.extend(deflated(text.as_bytes()).unwrap());
        format!("5.{}", BASE64_URL.encode(bytes))
    }

    #[test]
    fn hostile_links_are_refused_in_a_sentence() {
        let refused = |link: &str| read_link(link).unwrap_err().to_string();
        assert!(refused("").contains("no link to a route"));
        assert!(refused("hello").contains("no link to a route"));
        assert!(refused("4.AAAA").contains("no link to a route"));
        let newer = VERSION + 1;
        assert!(refused(&format!("{newer}.AAAA")).contains(&format!("version {newer}")));
        assert!(refused("5.<script>").contains("damaged"));
        assert!(refused(&"5".repeat(LONGEST_LINK + 1)).contains("16001 characters"));
        assert!(refused(&packed(&" ".repeat(LARGEST_ROUTE_BYTES + 1))).contains("200000 bytes"));
        assert!(refused(&packed("{}")).contains("missing field"));
        assert!(refused(&packed("{}},{\"id\":2")).contains("The "));
        let mut hot = Route::example();
        hot.soak.temperature_c = 5000.0;
        let text = serde_json::to_string(&hot).unwrap();
        assert!(refused(&packed(&text)).contains("5000"));
        assert!(write_link(&hot).is_err());
    }
}

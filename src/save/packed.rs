//! A text as letters for the page's address, and back.
//!
//! In base64url stands what deflate makes of the text, with a check sum before it. Deflate is first shown
//! [`SHOWN_BEFORE`], the words of saved routes.

use base64::Engine as _;
use base64::alphabet::URL_SAFE;
use base64::engine::general_purpose::{GeneralPurpose, NO_PAD};
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress};

/// Bytes of the check sum.
const SUM_BYTES: usize = 4;

/// What deflate is shown before the text: the words of saved routes, the most common last. It is
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

/// What is wrong with letters that are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Fault {
    /// Letters are missing or changed.
    Damaged,
    /// The text in them is larger than it may be.
    TooLarge,
}

/// A text as letters.
pub(crate) fn write(text: &str) -> Option<String> {
    let mut bytes = check_sum(text.as_bytes()).to_vec();
    bytes.extend(deflated(text.as_bytes())?);
    Some(BASE64_URL.encode(bytes))
}

/// The text of letters, at most so many bytes.
pub(crate) fn read(letters: &str, largest_bytes: usize) -> Result<String, Fault> {
    let bytes = BASE64_URL.decode(letters).map_err(|_| Fault::Damaged)?;
    let (sum, packed) = bytes.split_at_checked(SUM_BYTES).ok_or(Fault::Damaged)?;
    let text = inflated(packed, largest_bytes)?;
    if sum != check_sum(text.as_bytes()) {
        return Err(Fault::Damaged);
    }
    Ok(text)
}

/// FNV-1a: deflate alone would read many a changed letter as another text.
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
fn inflated(packed: &[u8], largest_bytes: usize) -> Result<String, Fault> {
    let shown = SHOWN_BEFORE.as_bytes();
    let mut out = shown.to_vec();
    out.resize(shown.len() + largest_bytes, 0);
    let (status, _, written) = decompress(
        &mut DecompressorOxide::new(),
        packed,
        &mut out,
        shown.len(),
        TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
    );
    match status {
        TINFLStatus::Done => {}
        TINFLStatus::HasMoreOutput => return Err(Fault::TooLarge),
        _ => return Err(Fault::Damaged),
    }
    out.truncate(shown.len() + written);
    String::from_utf8(out.split_off(shown.len())).map_err(|_| Fault::Damaged)
}

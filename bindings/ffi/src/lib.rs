//! The library that phones carry: all of the core's foreign surface, in one piece.
//!
//! There is nothing in here but the one number below: the types and functions that cross say so in
//! the core, where UniFFI's derives make the C functions that this crate's linker keeps.

pub use holdfast_core as core;

/// The digest of everything that crosses, record fields too, which `cargo task` reads from the
/// library and hands to the next build. Generated code holds it against its own before the first
/// call; UniFFI's checksums cover functions alone. 0 when cargo was run by hand: no code fits that.
#[expect(unsafe_code, reason = "a C name of our own: nothing else here has one")]
#[unsafe(no_mangle)]
pub extern "C" fn holdfast_surface() -> u64 {
    const SURFACE: u64 = match option_env!("HOLDFAST_SURFACE") {
        Some(digits) => match u64::from_str_radix(digits, 16) {
            Ok(digest) => digest,
            Err(_) => 0,
        },
        None => 0,
    };
    SURFACE
}

//! What is changed in generated code, word for word. Where UniFFI no longer writes what is replaced
//! here, that is an error and not a silent loss.

use std::fs;
use std::path::Path;

use crate::steps::Done;

/// Holds the library's surface against that of the generated code, where UniFFI's checksums are
/// held against each other: these cover functions, and no field of a record.
pub(crate) fn kotlin(code: &Path, surface: &str) -> Done {
    let declared = "    external fun ffi_holdfast_core_uniffi_contract_version(\n";
    let checked = "private fun uniffiCheckApiChecksums(lib: IntegrityCheckingUniffiLib) {\n";
    let declares = format!("    external fun holdfast_surface(): Long\n{declared}");
    let checks = format!(
        "{checked}    if (lib.holdfast_surface() != 0x{surface}uL.toLong()) {{\n        \
         throw RuntimeException(\"UniFFI API checksum mismatch: another surface\")\n    }}\n"
    );
    mend(code, &[(declared, &declares), (checked, &checks)])
}

/// The same, and a reader that takes numbers and texts whole where UniFFI's asks Foundation to copy
/// each through a protocol, which takes most of a screen's time.
pub(crate) fn swift(folder: &Path, surface: &str) -> Done {
    let declared = "uint32_t ffi_holdfast_core_uniffi_contract_version(void\n";
    let declares = format!("uint64_t holdfast_surface(void);\n{declared}");
    mend(&folder.join("HoldfastCoreFFI/HoldfastCoreFFI.h"), &[(declared, &declares)])?;
    let checked = "private let initializationResult: InitializationResult = {\n";
    let checks = format!(
        "{checked}    if holdfast_surface() != 0x{surface} {{\n        \
         return InitializationResult.apiChecksumMismatch\n    }}\n"
    );
    let code = folder.join("HoldfastCore/HoldfastCore.swift");
    mend(&code, &[(checked, &checks), READ_NUMBER, READ_BYTES])
}

const READ_NUMBER: (&str, &str) = (
    "    if T.self == UInt8.self {
        let value = reader.data[reader.offset]
        reader.offset += 1
        return value as! T
    }
    var value: T = 0
    let _ = withUnsafeMutableBytes(of: &value, { reader.data.copyBytes(to: $0, from: range)})
",
    "    let value = reader.data.withUnsafeBytes {
        $0.loadUnaligned(fromByteOffset: range.lowerBound, as: T.self)
    }
",
);

const READ_BYTES: (&str, &str) = (
    "    var value = [UInt8](repeating: 0, count: count)
    value.withUnsafeMutableBufferPointer({ buffer in
        reader.data.copyBytes(to: buffer, from: range)
    })
",
    "    let value = reader.data.withUnsafeBytes { [UInt8]($0[range]) }
",
);

/// Replaces each text, which must stand there once.
fn mend(code: &Path, changes: &[(&str, &str)]) -> Done {
    let said = |error: std::io::Error| format!("{}: {error}", code.display());
    let mut text = fs::read_to_string(code).map_err(said)?;
    for (old, new) in changes {
        if text.matches(old).count() != 1 {
            let name = code.display();
            return Err(format!(
                "{name} has this not once, so `cargo task` must mend it another way:\n{old}"
            ));
        }
        text = text.replace(old, new);
    }
    fs::write(code, text).map_err(said)
}

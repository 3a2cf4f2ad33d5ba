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

/// The same, and a reader that goes over the buffer where it lies. UniFFI's has Foundation copy each
/// number and text out of a `Data`, through a protocol and its witnesses; a screen of thousands took
/// eight times as long to read as to make.
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
    mend(&code, &[(checked, &checks), READER, REMAINING, LIFTED])?;
    let text = read(&code)?;
    write(&code, &text.replace(PLACES.0, PLACES.1))
}

/// The functions that read a buffer, as UniFFI writes them and as they should be.
const READER: (&str, &str) = (
    "\
fileprivate func createReader(data: Data) -> (data: Data, offset: Data.Index) {
    (data: data, offset: 0)
}

// Reads an integer at the current offset, in big-endian order, and advances
// the offset on success. Throws if reading the integer would move the
// offset past the end of the buffer.
fileprivate func readInt<T: FixedWidthInteger>(_ reader: inout (data: Data, offset: Data.Index)) throws -> T {
    let range = reader.offset..<reader.offset + MemoryLayout<T>.size
    guard reader.data.count >= range.upperBound else {
        throw UniffiInternalError.bufferOverflow
    }
    if T.self == UInt8.self {
        let value = reader.data[reader.offset]
        reader.offset += 1
        return value as! T
    }
    var value: T = 0
    let _ = withUnsafeMutableBytes(of: &value, { reader.data.copyBytes(to: $0, from: range)})
    reader.offset = range.upperBound
    return value.bigEndian
}

// Reads an arbitrary number of bytes, to be used to read
// raw bytes, this is useful when lifting strings
fileprivate func readBytes(_ reader: inout (data: Data, offset: Data.Index), count: Int) throws -> Array<UInt8> {
    let range = reader.offset..<(reader.offset+count)
    guard reader.data.count >= range.upperBound else {
        throw UniffiInternalError.bufferOverflow
    }
    var value = [UInt8](repeating: 0, count: count)
    value.withUnsafeMutableBufferPointer({ buffer in
        reader.data.copyBytes(to: buffer, from: range)
    })
    reader.offset = range.upperBound
    return value
}

",
    "\
/// What of a buffer is still to be read.
public struct UniffiReader {
    fileprivate var rest: UnsafeRawBufferPointer
}

fileprivate func take(_ reader: inout UniffiReader, _ count: Int) throws -> UnsafeRawBufferPointer {
    guard count >= 0, count <= reader.rest.count else { throw UniffiInternalError.bufferOverflow }
    defer { reader.rest = UnsafeRawBufferPointer(rebasing: reader.rest[count...]) }
    return UnsafeRawBufferPointer(rebasing: reader.rest[..<count])
}

fileprivate func readInt<T: FixedWidthInteger>(_ reader: inout UniffiReader) throws -> T {
    T(bigEndian: try take(&reader, MemoryLayout<T>.size).loadUnaligned(as: T.self))
}

fileprivate func readBytes(_ reader: inout UniffiReader, count: Int) throws -> UnsafeRawBufferPointer {
    try take(&reader, count)
}

",
);

const REMAINING: (&str, &str) =
    ("    return reader.offset < reader.data.count\n", "    return !reader.rest.isEmpty\n");

const LIFTED: (&str, &str) = (
    "        var reader = createReader(data: Data(rustBuffer: buf))\n",
    "        let whole = UnsafeRawBufferPointer(start: buf.data, count: Int(buf.len))
        var reader = UniffiReader(rest: whole)
",
);

/// The reader's type, which stands at every place that reads.
const PLACES: (&str, &str) = ("(data: Data, offset: Data.Index)", "UniffiReader");

/// Replaces each text, which must stand there once.
fn mend(code: &Path, changes: &[(&str, &str)]) -> Done {
    let mut text = read(code)?;
    for (old, new) in changes {
        if text.matches(old).count() != 1 {
            let name = code.display();
            return Err(format!(
                "{name} has this not once, so `cargo task` must mend it another way:\n{old}"
            ));
        }
        text = text.replace(old, new);
    }
    write(code, &text)
}

fn read(code: &Path) -> Result<String, String> {
    fs::read_to_string(code).map_err(|error| format!("{}: {error}", code.display()))
}

fn write(code: &Path, text: &str) -> Done {
    fs::write(code, text).map_err(|error| format!("{}: {error}", code.display()))
}

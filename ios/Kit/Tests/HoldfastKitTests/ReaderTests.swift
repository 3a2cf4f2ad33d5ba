import Foundation
import HoldfastCoreFFI
import HoldfastKit
import Support
import XCTest

/// The generated reader goes over the library's memory where it lies, so it has to know where that ends.
final class ReaderTests: XCTestCase {
    /// Bytes that end where the process may read no further: reading one byte past them would kill it.
    private func atTheEdge(_ bytes: some Collection<UInt8>, _ read: (RustBuffer) throws -> Void) throws {
        let page = Int(getpagesize())
        let room = (bytes.count / page + 1) * page
        let start = try XCTUnwrap(mmap(nil, room + page, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANON, -1, 0))
        defer { munmap(start, room + page) }
        XCTAssertEqual(mprotect(start + room, page, PROT_NONE), 0)
        UnsafeMutableRawBufferPointer(start: start + room - bytes.count, count: bytes.count).copyBytes(from: bytes)
        let (count, data) = (UInt64(bytes.count), (start + room - bytes.count).assumingMemoryBound(to: UInt8.self))
        try read(RustBuffer(capacity: count, len: count, data: data))
    }

    func testATruncatedBufferIsAnErrorAndNotReadPast() throws {
        let (_, zoe) = try crew(homes())
        let screen = try zoe.tap(squat(kilograms(50)))
        let buffer = FfiConverterTypeSessionScreen_lower(screen)
        let bytes = Array(UnsafeBufferPointer(start: buffer.data, count: Int(buffer.len)))
        XCTAssertGreaterThan(bytes.count, 1_000)
        for count in 0..<bytes.count {
            try atTheEdge(bytes[..<count]) { cut in
                XCTAssertThrowsError(try FfiConverterTypeSessionScreen_lift(cut), "cut at \(count)") { error in
                    let wanted = "Reading the requested value would read past the end of the buffer"
                    XCTAssertEqual(error.localizedDescription, wanted, "cut at \(count)")
                }
            }
        }
        XCTAssertEqual(try FfiConverterTypeSessionScreen_lift(buffer), screen, "uncut it is read, and freed")
    }

    func testABufferWithMoreThanItsValueIsAnError() throws {
        try atTheEdge([UInt8](repeating: 0, count: 9)) { long in
            XCTAssertThrowsError(try FfiConverterTypeMass_lift(long)) { error in
                let wanted = "The buffer still has data after lifting its containing value"
                XCTAssertEqual(error.localizedDescription, wanted)
            }
        }
    }

    func testATextThatSaysItIsLongerThanTheBufferIsAnError() throws {
        for length: [UInt8] in [[0xff, 0xff, 0xff, 0xff], [0x7f, 0xff, 0xff, 0xff]] {
            try atTheEdge(length + [UInt8](repeating: 0, count: 8)) { file in
                XCTAssertThrowsError(try FfiConverterTypeListedFile_lift(file))
            }
        }
    }
}

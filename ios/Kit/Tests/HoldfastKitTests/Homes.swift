import Foundation
import HoldfastKit
import XCTest

/// Foundation has a `Host` of its own on a Mac and on Linux; a name of this module's comes before both.
typealias Host = HoldfastKit.Host

extension XCTestCase {
    /// A folder that is gone after the test.
    func homes() throws -> URL {
        let name = "holdfast-\(UUID().uuidString)"
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent(name)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        addTeardownBlock { try FileManager.default.removeItem(at: folder) }
        return folder
    }

    /// A program of this package, beside the tests.
    func program(_ name: String) -> URL {
        #if os(Linux)
        let tests = URL(fileURLWithPath: CommandLine.arguments[0])
        #else
        let tests = Bundle(for: type(of: self)).bundleURL
        #endif
        return tests.deletingLastPathComponent().appendingPathComponent(name)
    }
}

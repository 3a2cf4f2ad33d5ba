import Foundation
import HoldfastKit
import Support
import XCTest

/// What only shows from outside a process.
final class ProcessTests: XCTestCase {
    private func process(_ name: String, _ args: [String], said: URL) throws -> Process {
        try Data().write(to: said)
        let process = Process()
        process.executableURL = program(name)
        process.arguments = args
        process.standardOutput = try FileHandle(forWritingTo: said)
        process.standardError = process.standardOutput
        return process
    }

    private func lines(_ said: URL) throws -> [Substring] {
        let text = String(decoding: try Data(contentsOf: said), as: UTF8.self)
        // A number without its line's end was not said to the end.
        return text.split(separator: "\n", omittingEmptySubsequences: false).dropLast()
    }

    func testAnAppKilledBetweenTapsGoesOnWhereItWas() throws {
        let homes = try homes()
        let (_, zoe) = try crew(homes)
        try zoe.tap(squat(kilograms(50), 0))
        try zoe.core.shut()
        var reps: UInt32 = 0
        for _ in 0..<4 {
            let said = homes.appendingPathComponent("said")
            let child = try process("Logging", [zoe.home, "\(reps)"], said: said)
            try child.run()
            let wanted = Int.random(in: 1...60)
            let limit = Date() + 60
            while child.isRunning, Date() < limit, try lines(said).count < wanted { usleep(500) }
            let sofar = try lines(said)
            XCTAssertTrue(child.isRunning, "\(sofar)")
            // SIGKILL: nothing of it can tidy up.
            kill(child.processIdentifier, SIGKILL)
            child.waitUntilExit()
            let acknowledged = UInt32(try lines(said).last!)!
            let core = try Holdfast.open(home: zoe.home, at: zoe.now, keystore: nil)
            guard case let .strength(view) = try core.today(at: zoe.now).pieces[0].kind else {
                return XCTFail("no strength")
            }
            reps = view.sets[0].done!.reps
            // One tap may have been on disk before it could be said.
            XCTAssertTrue([acknowledged, (acknowledged + 1) % 100].contains(reps), "\(reps) after \(acknowledged)")
            XCTAssertNil(try core.who().opening)
            try core.shut()
        }
    }

    #if os(Linux)
    /// Generated Swift stops the process at such a library: on a device both are one file, so only
    /// whoever builds can meet this.
    func testALibraryOfAnotherVersionIsRefused() throws {
        let homes = try homes()
        let (_, zoe) = try crew(homes)
        try zoe.core.shut()
        func opening(_ environment: [String: String]) throws -> (status: Int32, said: String) {
            let said = homes.appendingPathComponent("said")
            let child = try process("Opening", [zoe.home], said: said)
            child.environment = ProcessInfo.processInfo.environment.merging(environment) { $1 }
            try child.run()
            child.waitUntilExit()
            return (child.terminationStatus, String(decoding: try Data(contentsOf: said), as: UTF8.self))
        }
        let own = try opening([:])
        XCTAssertEqual(own.said, "opened\n")
        let other = ProcessInfo.processInfo.environment["HOLDFAST_OTHER_LIBRARY"]!
        let refused = try opening(["LD_LIBRARY_PATH": other])
        XCTAssertNotEqual(refused.status, 0)
        XCTAssertTrue(refused.said.contains("API checksum mismatch"), refused.said)
    }
    #endif
}

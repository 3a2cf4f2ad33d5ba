import Foundation
@testable import HoldfastKit
import Support
import XCTest

/// What sets a host apart from a plain actor around the core.
final class CoreThreadTests: XCTestCase {
    @MainActor
    func testTapsOfTheMainActorKeepTheirOrder() async throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let now = zoe.now
        let host = try await Host.open(home: zoe.home, clock: { now })
        // Once is luck: of 20 rounds, 10 went wrong where a tap began on the shared threads.
        for _ in 0..<20 {
            let taps = (1...30 as ClosedRange<UInt32>).map { reps in
                Task { try await host.tap(squat(kilograms(50), reps, set: 1), answers: nil).saved! }
            }
            var saved: [UInt64] = []
            for tap in taps { saved.append(try await tap.value) }
            XCTAssertEqual(saved, saved.sorted())
        }
        try await host.close()
    }

    @MainActor
    func testATapHasTheMomentOfItsCall() async throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let (now, taken, gate) = (zoe.now, Count(), Gate())
        let host = try await Host.open(home: zoe.home, clock: { _ = taken.add(); return now })
        let question = Task { try await host.ask { _, _ in gate.pass() } }
        try await reach(1) { gate.came }
        let before = taken.value
        let tap = Task { try await host.tap(squat(kilograms(50), 7), answers: nil) }
        try await reach(before + 1) { taken.value }
        XCTAssertFalse(gate.isOverrun)
        gate.release()
        try await question.value
        _ = try await tap.value
        try await host.close()
    }

    /// As many hosts as there are shared threads wait, and still other tasks run.
    @MainActor
    func testWhoeverWaitsForTheDiskHoldsNoSharedThread() async throws {
        let (homes, many) = (try homes(), ProcessInfo.processInfo.activeProcessorCount)
        let opening = Gate()
        let made = (0..<many).map { number in
            let home = homes.appendingPathComponent("\(number)").path
            let clock: DeviceClock = { opening.pass(); return evening("2026-11-02") }
            return Task.detached {
                try await Host.start(home: home, start: start(.athlete, "Zoë"), clock: clock)
            }
        }
        try await reach(many) { opening.came }
        let duringOpening = await Task.detached { opening.isOverrun }.value
        XCTAssertFalse(duringOpening, "opening held the shared threads")
        opening.release()
        var hosts: [Host] = []
        for host in made { hosts.append(try await host.value) }

        let asking = Gate()
        let asked = hosts.map { host in Task.detached { try await host.ask { _, _ in asking.pass() } } }
        try await reach(many) { asking.came }
        let duringQuestions = await Task.detached { asking.isOverrun }.value
        XCTAssertFalse(duringQuestions, "questions held the shared threads")
        asking.release()
        for question in asked { try await question.value }
        for host in hosts { try await host.close() }
    }

    @MainActor
    func testAnOlderScreenThatComesLateIsNotSessionModel() async throws {
        let (_, zoe) = try crew(homes())
        let older = try zoe.tap(squat(kilograms(50), 5))
        let newer = try zoe.tap(squat(kilograms(60), 6))
        let session = SessionModel()
        session.show(newer, number: 2)
        session.show(older, number: 1)
        XCTAssertEqual(session.screen, newer)
    }
}

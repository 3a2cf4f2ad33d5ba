import Foundation
@testable import HoldfastKit
import Support
import XCTest

/// A gate that holds whoever comes through, and opens by itself before a test could hang.
private final class Gate: @unchecked Sendable {
    private let lock = NSCondition()
    private var open = false
    private var waiting = 0
    private var overran = false

    /// How many came, whether held still or not.
    var came: Int { lock.withLock { waiting } }

    /// True when the gate had to open by itself.
    var isOverrun: Bool { lock.withLock { overran } }

    func pass() {
        lock.withLock {
            waiting += 1
            let limit = Date() + 10
            while !open, !overran {
                if !lock.wait(until: limit) { overran = !open }
            }
        }
    }

    func release() {
        lock.withLock {
            open = true
            lock.broadcast()
        }
    }
}

/// Counts how often the moment was asked for.
private final class Count: @unchecked Sendable {
    private let lock = NSLock()
    private var count = 0

    var value: Int { lock.withLock { count } }

    func add() { lock.withLock { count += 1 } }
}

/// Waits for a number to come up, but not for ever.
@MainActor
private func reach(_ wanted: Int, _ value: () -> Int) async throws {
    let limit = Date() + 5
    while value() < wanted, Date() < limit { try await Task.sleep(nanoseconds: 1_000_000) }
    XCTAssertEqual(value(), wanted)
}

/// What sets a keeper apart from a plain actor around the core.
final class LaneTests: XCTestCase {
    @MainActor
    func testTapsOfTheMainActorKeepTheirOrder() async throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let now = zoe.now
        let keeper = try await Keeper.open(home: zoe.home, moments: { now })
        // Once is luck: of 20 rounds, 10 went wrong where a tap began on the shared threads.
        for _ in 0..<20 {
            let taps = (1...30 as ClosedRange<UInt32>).map { reps in
                Task { try await keeper.tap(squat(kilograms(50), reps, set: 1)).saved! }
            }
            var saved: [UInt64] = []
            for tap in taps { saved.append(try await tap.value) }
            XCTAssertEqual(saved, saved.sorted())
        }
        try await keeper.close()
    }

    @MainActor
    func testATapHasTheMomentOfItsCall() async throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let (now, taken, gate) = (zoe.now, Count(), Gate())
        let keeper = try await Keeper.open(home: zoe.home, moments: { taken.add(); return now })
        let question = Task { try await keeper.ask { _, _ in gate.pass() } }
        try await reach(1) { gate.came }
        let before = taken.value
        let tap = Task { try await keeper.tap(squat(kilograms(50), 7)) }
        try await reach(before + 1) { taken.value }
        XCTAssertFalse(gate.isOverrun)
        gate.release()
        try await question.value
        _ = try await tap.value
        try await keeper.close()
    }

    /// As many keepers as there are shared threads wait, and still other tasks run.
    @MainActor
    func testWhoeverWaitsForTheDiskHoldsNoSharedThread() async throws {
        let (homes, many) = (try homes(), ProcessInfo.processInfo.activeProcessorCount)
        let opening = Gate()
        let made = (0..<many).map { number in
            let home = homes.appendingPathComponent("\(number)").path
            let moments: Moments = { opening.pass(); return evening("2026-11-02") }
            return Task.detached {
                try await Keeper.start(home: home, start: start(.athlete, "Zoë"), moments: moments)
            }
        }
        try await reach(many) { opening.came }
        let duringOpening = await Task.detached { opening.isOverrun }.value
        XCTAssertFalse(duringOpening, "opening held the shared threads")
        opening.release()
        var keepers: [Keeper] = []
        for keeper in made { keepers.append(try await keeper.value) }

        let asking = Gate()
        let asked = keepers.map { keeper in Task.detached { try await keeper.ask { _, _ in asking.pass() } } }
        try await reach(many) { asking.came }
        let duringQuestions = await Task.detached { asking.isOverrun }.value
        XCTAssertFalse(duringQuestions, "questions held the shared threads")
        asking.release()
        for question in asked { try await question.value }
        for keeper in keepers { try await keeper.close() }
    }

    @MainActor
    func testAnOlderScreenThatComesLateIsNotShown() async throws {
        let (_, zoe) = try crew(homes())
        let older = try zoe.tap(squat(kilograms(50), 5))
        let newer = try zoe.tap(squat(kilograms(60), 6))
        let shown = Shown()
        shown.show(newer, number: 2)
        shown.show(older, number: 1)
        XCTAssertEqual(shown.screen, newer)
    }
}

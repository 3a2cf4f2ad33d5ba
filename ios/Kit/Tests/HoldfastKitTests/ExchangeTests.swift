import Foundation
import HoldfastKit
import Support
import XCTest

/// A coach who has published the small plan and a paired athlete without one.
private func hosts(_ homes: URL) async throws -> (coach: Host, zoe: Host) {
    func started(_ role: Role, _ name: String, _ chance: UInt8) async throws -> Host {
        let (home, start) = (homes.appendingPathComponent(name).path, start(role, name, chance: chance))
        return try await Host.start(home: home, start: start, clock: { evening("2026-11-03") })
    }
    let (coach, zoe) = (try await started(.coach, "Märta", 0), try await started(.athlete, "Zoë", 60))
    let (one, other) = (try await coach.ask { core, _ in core }, try await zoe.ask { core, _ in core })
    try pair(one, other, at: evening("2026-11-03"), chance: 1)
    let plan = try Fixtures.plan()
    _ = try await coach.ask { core, now in try core.publish(sourceName: "plan.toml", text: plan, at: now) }
    return (coach, zoe)
}

/// A host drives the core's steps against a carrier.
final class ExchangeTests: XCTestCase {
    func testAPlanGoesOutAndALogComesBack() async throws {
        let ((coach, zoe), carrier) = (try await hosts(homes()), MemoryCarrier())
        let published = try await coach.exchange(with: carrier)
        // What is for Zoë, and what is the coach's own.
        XCTAssertEqual(published.put, 2)
        let joined = try await zoe.exchange(with: carrier)
        XCTAssertEqual([joined.leaves, joined.put], [1, 1])
        let planned = try await zoe.today()
        XCTAssertEqual(planned.block, "Small block")
        try await zoe.tap(.begin(day: nil), answers: planned.revision)
        try await zoe.tap(squat(kilograms(50), 8), answers: nil)
        let logged = try await zoe.exchange(with: carrier)
        XCTAssertEqual([logged.leaves, logged.put], [0, 1])
        let taken = try await coach.exchange(with: carrier)
        XCTAssertEqual(taken.leaves, 2)
        XCTAssertEqual(taken.aside, [])
        let page = try await coach.ask { core, _ in try core.member(name: "Zoë", date: Day("2026-11-03")!) }
        XCTAssertEqual(page.sessions.count, 1)
        XCTAssertEqual(page.lifts.flatMap(\.points).map(\.heaviest), [kilograms(50)])
        let nothing = try await coach.exchange(with: carrier)
        XCTAssertEqual([nothing.leaves, nothing.put], [0, 0])
    }

    func testAFileThatCannotBeReadIsReportedAndComesLater() async throws {
        let ((coach, zoe), carrier) = (try await hosts(homes()), MemoryCarrier())
        _ = try await coach.exchange(with: carrier)
        let names = carrier.list().map(\.name)
        carrier.tear(names)
        let torn = try await zoe.exchange(with: carrier)
        XCTAssertEqual(torn.aside.count, 1)
        XCTAssertTrue(torn.aside.allSatisfy { names.contains($0.name) })
        XCTAssertEqual(torn.aside.map(\.reason), ["This file cannot be read: it is torn"])
        carrier.tear([])
        let whole = try await zoe.exchange(with: carrier)
        XCTAssertEqual(whole.leaves, 1)
        XCTAssertEqual(whole.aside, [])
    }

    func testAFileThatCannotBeWrittenKeepsNobodyFromBringingTheOthers() async throws {
        let ((coach, zoe), carrier) = (try await hosts(homes()), MemoryCarrier())
        carrier.fill { _ in true }
        do {
            _ = try await coach.exchange(with: carrier)
            XCTFail("nothing was delivered, and nobody was told")
        } catch let HoldfastError.Storage(_, reason) {
            XCTAssertEqual(reason, "it is full")
        }
        carrier.fill { _ in false }
        _ = try await coach.exchange(with: carrier)
        carrier.fill { _ in true }
        let fetched = try await zoe.exchange(with: carrier)
        XCTAssertEqual([fetched.leaves, fetched.put], [1, 0])
        XCTAssertEqual(fetched.aside.map(\.reason), ["This file could not be delivered: it is full"])
        carrier.fill { _ in false }
        let delivered = try await zoe.exchange(with: carrier)
        XCTAssertEqual([delivered.put, UInt32(delivered.aside.count)], [1, 0])
    }

    @MainActor
    func testTapsGoOnWhileACarrierIsSlowAndExchangesTakeTurns() async throws {
        let ((coach, zoe), carrier) = (try await hosts(homes()), MemoryCarrier())
        _ = try await coach.exchange(with: carrier)
        _ = try await zoe.exchange(with: carrier)
        let slow = Slow(carrier: carrier)
        let exchanges = (0..<3).map { _ in Task { try await zoe.exchange(with: slow) } }
        try await reach(1) { slow.lists.value }
        try await zoe.tap(.begin(day: nil), answers: nil)
        try await zoe.tap(squat(kilograms(50), 8), answers: nil)
        XCTAssertEqual(slow.lists.value, 1, "the others wait")
        _ = slow.letGo.add()
        var put: [UInt32] = []
        for exchange in exchanges { put.append(try await exchange.value.put) }
        XCTAssertEqual(slow.lists.value, 3)
        XCTAssertEqual(put.reduce(0, +), 1, "what was tapped meanwhile went along once")
    }

    @MainActor
    func testACancelledExchangeStopsAndTheNextOneRuns() async throws {
        let ((coach, zoe), carrier) = (try await hosts(homes()), MemoryCarrier())
        _ = try await coach.exchange(with: carrier)
        let slow = Slow(carrier: carrier)
        let exchange = Task { try await zoe.exchange(with: slow) }
        try await reach(1) { slow.lists.value }
        exchange.cancel()
        do {
            _ = try await exchange.value
            XCTFail("it went on")
        } catch is CancellationError {}
        let next = try await zoe.exchange(with: carrier)
        XCTAssertGreaterThan(next.leaves, 0)
    }

    func testACarriersErrorReachesWhoeverAskedAndTheNextOneRuns() async throws {
        struct Away: Error {}
        struct Gone: Carrier {
            func list() throws -> [ListedFile] { throw Away() }
            func get(_ names: [String]) -> (files: [CarriedFile], unread: [FailedFile]) { ([], []) }
            func put(_ files: [CarriedFile]) -> (written: UInt32, unwritten: [FailedFile]) { (0, []) }
        }
        let (coach, _) = try await hosts(homes())
        do {
            _ = try await coach.exchange(with: Gone())
            XCTFail("nothing was thrown")
        } catch is Away {}
        let next = try await coach.exchange(with: MemoryCarrier())
        XCTAssertEqual(next.put, 2)
    }
}

/// A carrier whose listing waits until it is let go, or a test would hang; it holds no thread.
private struct Slow: Carrier {
    let carrier: MemoryCarrier
    let lists = Count()
    let letGo = Count()

    func list() async -> [ListedFile] {
        _ = lists.add()
        let limit = Date() + 10
        while letGo.value == 0, Date() < limit, !Task.isCancelled { try? await Task.sleep(nanoseconds: 1_000_000) }
        return carrier.list()
    }

    func get(_ names: [String]) -> (files: [CarriedFile], unread: [FailedFile]) { carrier.get(names) }

    func put(_ files: [CarriedFile]) -> (written: UInt32, unwritten: [FailedFile]) { carrier.put(files) }
}

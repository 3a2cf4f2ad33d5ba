import Foundation
import HoldfastKit
import Observation
import Support
import XCTest

final class KeeperTests: XCTestCase {
    private func keeper() async throws -> Keeper {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let now = zoe.now
        return try await Keeper.open(home: zoe.home, moments: { now })
    }

    private func sets(_ screen: SessionScreen) -> [UInt32?] {
        guard case let .strength(view) = screen.pieces[0] else { return [] }
        return view.sets.map { $0.done?.reps }
    }

    func testTheLastScreenIsKeptForWhoeverDrawsIt() async throws {
        let keeper = try await keeper()
        let shown = keeper.shown
        let before = await shown.screen
        XCTAssertNil(before)
        let changed = expectation(description: "views are told")
        await MainActor.run {
            withObservationTracking { _ = shown.screen } onChange: { changed.fulfill() }
        }
        let today = try await keeper.today()
        await fulfillment(of: [changed], timeout: 10)
        let after = await shown.screen
        XCTAssertEqual(after, today)
        let tapped = try await keeper.tap(squat(kilograms(50)))
        let last = await shown.screen
        XCTAssertEqual(last, tapped)
        let name = try await keeper.ask { core, _ in try core.who().name }
        XCTAssertEqual(name, "Zoë")
    }

    func testATapIsDoneEvenWhenItsMakerIsGone() async throws {
        let keeper = try await keeper()
        let maker = Task { try await keeper.tap(squat(kilograms(50), 7)) }
        maker.cancel()
        _ = try? await maker.value
        let screen = try await keeper.today()
        XCTAssertEqual(sets(screen), [7, nil, nil])
    }

    func testAnOlderScreenNeverCoversANewerOne() async throws {
        let keeper = try await keeper()
        let saved = try await withThrowingTaskGroup(of: UInt64.self) { group in
            for reps in 1...50 as ClosedRange<UInt32> {
                group.addTask { try await keeper.tap(squat(kilograms(50), reps, set: 1)).saved! }
            }
            var saved: [UInt64] = []
            for try await number in group { saved.append(number) }
            return saved
        }
        XCTAssertEqual(Set(saved).count, 50)
        let shown = await keeper.shown.screen
        XCTAssertEqual(shown?.saved, saved.max())
    }

    func testNothingIsAskedOfAKeeperThatIsClosed() async throws {
        let keeper = try await keeper()
        try await keeper.close()
        try await keeper.close()
        do {
            try await keeper.tap(Tap.undo)
            XCTFail("a closed keeper took a tap")
        } catch let error as CompanionError {
            XCTAssertEqual(error.words, "companion: it is closed: open it again")
        }
    }

    func testStartingMakesTheHomeThatOpeningFinds() async throws {
        let home = try homes().appendingPathComponent("Ægir's phone").path
        let moments: Moments = { evening("2026-11-02") }
        try await Keeper.start(home: home, start: start(.athlete, "Ægir"), moments: moments).close()
        let name = try await Keeper.open(home: home, moments: moments).ask { core, _ in try core.who().name }
        XCTAssertEqual(name, "Ægir")
    }

    func testTwoThreadsOnOneObjectLoseNothing() throws {
        let (_, zoe) = try crew(homes())
        let first = try zoe.tap(squat(kilograms(50))).saved!
        let (core, now, each) = (zoe.core, zoe.now, 100)
        DispatchQueue.concurrentPerform(iterations: 2) { thread in
            for reps in 0..<UInt32(each) {
                let tap: Tap = thread == 0
                    ? squat(kilograms(50), reps, set: 1)
                    : .logWindow(piece: "Corners", window: 1, reps: reps, spareMs: 5_000)
                do { _ = try core.tap(tap: tap, at: now) } catch { XCTFail("\(error)") }
            }
        }
        let screen = try zoe.tap(squat(kilograms(60)))
        XCTAssertEqual(screen.saved, first + UInt64(2 * each) + 1)
        XCTAssertEqual(sets(screen)[0], 99)
        guard case let .interval(view) = screen.pieces[1] else { return XCTFail("no interval") }
        XCTAssertEqual(view.windows[0].reps, 99)
    }
}

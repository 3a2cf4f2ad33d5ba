import Foundation
import HoldfastKit
import Observation
import Support
import XCTest

final class HostTests: XCTestCase {
    private func host() async throws -> Host {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let now = zoe.now
        return try await Host.open(home: zoe.home, clock: { now })
    }

    private func sets(_ screen: SessionScreen) -> [UInt32?] {
        guard case let .strength(view) = screen.pieces[0].kind else { return [] }
        return view.sets.map { $0.done?.reps }
    }

    func testTheLastScreenIsKeptForWhoeverDrawsIt() async throws {
        let host = try await host()
        let session = host.session
        let before = await session.screen
        XCTAssertNil(before)
        let changed = expectation(description: "views are told")
        await MainActor.run {
            withObservationTracking { _ = session.screen } onChange: { changed.fulfill() }
        }
        let today = try await host.today()
        await fulfillment(of: [changed], timeout: 10)
        let after = await session.screen
        XCTAssertEqual(after, today)
        let tapped = try await host.tap(squat(kilograms(50)), answers: nil)
        let last = await session.screen
        XCTAssertEqual(last, tapped)
        let name = try await host.ask { core, _ in try core.who().name }
        XCTAssertEqual(name, "Zoë")
    }

    func testATapIsDoneEvenWhenItsMakerIsGone() async throws {
        let host = try await host()
        let maker = Task { try await host.tap(squat(kilograms(50), 7), answers: nil) }
        maker.cancel()
        _ = try? await maker.value
        let screen = try await host.today()
        XCTAssertEqual(sets(screen), [7, nil, nil])
    }

    func testAnOlderScreenNeverCoversANewerOne() async throws {
        let host = try await host()
        let saved = try await withThrowingTaskGroup(of: UInt64.self) { group in
            for reps in 1...50 as ClosedRange<UInt32> {
                group.addTask { try await host.tap(squat(kilograms(50), reps, set: 1), answers: nil).saved! }
            }
            var saved: [UInt64] = []
            for try await number in group { saved.append(number) }
            return saved
        }
        XCTAssertEqual(Set(saved).count, 50)
        let screen = await host.session.screen
        XCTAssertEqual(screen?.saved, saved.max())
    }

    /// The second tap comes long after the first: what tells them apart is the screen they answer.
    func testAKeyTappedTwiceOnOneScreenLogsOnce() async throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let (now, minutes) = (zoe.now, Count())
        let host = try await Host.open(home: zoe.home, clock: { later(now, 60_000 * Int64(minutes.add())) })
        let screen = try await host.today()
        let next = squat(kilograms(50), 8)
        let first = try await host.tap(next, answers: screen.revision)
        XCTAssertEqual(sets(first), [8, nil, nil])
        let second = try await host.tap(next, answers: screen.revision)
        XCTAssertEqual(sets(second), [8, nil, nil])
        XCTAssertNil(second.saved)
        XCTAssertEqual([first.ignored, second.ignored], [false, true])
        let third = try await host.tap(next, answers: second.revision)
        XCTAssertEqual(sets(third), [8, 8, nil])
        let meant = try await host.tap(next, answers: nil)
        XCTAssertEqual(sets(meant), [8, 8, 8])
    }

    func testARowChosenByHandIsShown() async throws {
        let host = try await host()
        let row = Row.window(piece: "Corners", window: 2)
        let chosen = try await host.choose(row)
        XCTAssertEqual(chosen.here.row, row)
        let shown = await host.session.screen
        XCTAssertEqual(shown, chosen)
        let back = try await host.choose(nil)
        XCTAssertEqual(back.here.row, .set(piece: "Squat", set: 1))
    }

    func testNothingIsAskedOfAHostThatIsClosed() async throws {
        let host = try await host()
        try await host.close()
        try await host.close()
        do {
            try await host.tap(.undo, answers: nil)
            XCTFail("a closed host took a tap")
        } catch let error as HoldfastError {
            XCTAssertEqual(error.words, "Holdfast is closed. Open it again.")
        }
    }

    func testStartingMakesTheHomeThatOpeningFinds() async throws {
        let home = try homes().appendingPathComponent("Ægir's phone").path
        let clock: DeviceClock = { evening("2026-11-02") }
        try await Host.start(home: home, start: start(.athlete, "Ægir"), clock: clock).close()
        let name = try await Host.open(home: home, clock: clock).ask { core, _ in try core.who().name }
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
                    : .logWindow(piece: "Corners", window: 1, reps: reps, spare: .seconds(5))
                do { _ = try core.tap(tap: tap, answers: nil, at: now) } catch { XCTFail("\(error)") }
            }
        }
        let screen = try zoe.tap(squat(kilograms(60)))
        XCTAssertEqual(screen.saved, first + UInt64(2 * each) + 1)
        XCTAssertEqual(sets(screen)[0], 99)
        guard case let .interval(view) = screen.pieces[1].kind else { return XCTFail("no interval") }
        XCTAssertEqual(view.windows[0].reps, 99)
    }
}

import Foundation
import XCTest

/// A gate that holds whoever comes through, and opens by itself before a test could hang.
final class Gate: @unchecked Sendable {
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

/// Waits for a number to come up, but not for ever.
@MainActor
func reach(_ wanted: Int, _ value: () -> Int) async throws {
    let limit = Date() + 5
    while value() < wanted, Date() < limit { try await Task.sleep(nanoseconds: 1_000_000) }
    XCTAssertEqual(value(), wanted)
}

/// Counts calls from any thread.
final class Count: @unchecked Sendable {
    private let lock = NSLock()
    private var count = 0

    var value: Int { lock.withLock { count } }

    func add() -> Int {
        lock.withLock {
            count += 1
            return count
        }
    }
}

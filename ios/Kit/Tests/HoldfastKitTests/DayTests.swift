import Foundation
import HoldfastKit
import XCTest

final class DayTests: XCTestCase {
    /// Foundation's calendar beside it, over all of the days of eight hundred years.
    func testEveryDayIsTheCalendars() throws {
        var calendar = Calendar(identifier: .iso8601)
        calendar.timeZone = try XCTUnwrap(TimeZone(identifier: "UTC"))
        for since1970 in stride(from: Int64(-135_140), to: 157_060, by: 7) {
            let day = Day(since1970: since1970)
            let parts = calendar.dateComponents([.year, .month, .day], from: day.noon)
            XCTAssertEqual(parts, DateComponents(year: day.parts.year, month: day.parts.month, day: day.parts.day))
            XCTAssertEqual(Day("\(day)"), day)
        }
    }

    func testWhatIsNoDayIsNone() {
        for text in ["2026-02-29", "2026-13-01", "2026-00-01", "2026-1-1", "3 Nov", "", "-026-01-01", "2026-11-31"] {
            XCTAssertNil(Day(text), text)
        }
        XCTAssertEqual(Day("2024-02-29").map { $0 + 1 }, Day("2024-03-01"))
        XCTAssertEqual(Day("1970-01-01")?.since1970, 0)
    }

    func testTheZoneSaysWhichDayItIs() throws {
        let moment = Date(timeIntervalSince1970: 1_795_563_000)
        XCTAssertEqual("\(Day(of: moment, in: try XCTUnwrap(TimeZone(identifier: "UTC"))))", "2026-11-24")
        XCTAssertEqual("\(Day(of: moment, in: try XCTUnwrap(TimeZone(identifier: "Europe/Berlin"))))", "2026-11-25")
    }
}

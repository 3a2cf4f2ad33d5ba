import Foundation

/// A day of the calendar without a time or a zone: Foundation has none. (`DateComponents` may lack
/// any of its parts and has no order; a `Date` is a moment, which another zone puts on another day.)
///
/// The calendar is the Gregorian one, also before it was in use, as in ISO 8601.
public struct Day: Hashable, Comparable, Sendable, Codable {
    /// Days since 1 January 1970.
    public var since1970: Int64

    public init(since1970: Int64) { self.since1970 = since1970 }

    /// The day of a date as people write it; nil where there is none, such as 30 February.
    public init?(year: Int, month: Int, day: Int) {
        guard (-200_000...200_000).contains(year), (1...12).contains(month), (1...31).contains(day) else { return nil }
        // Years begin in March, so that a leap day is the last of its year (Hinnant, "chrono-compatible
        // low-level date algorithms").
        let (shifted, fromMarch) = (month > 2 ? year : year - 1, (month + 9) % 12)
        let era = (shifted >= 0 ? shifted : shifted - 399) / 400
        let ofEra = shifted - era * 400
        let ofYear = (153 * fromMarch + 2) / 5 + day - 1
        since1970 = Int64(era * 146_097 + ofEra * 365 + ofEra / 4 - ofEra / 100 + ofYear - 719_468)
        guard parts == (year, month, day) else { return nil }
    }

    /// Reads `2026-11-25`.
    public init?(_ text: String) {
        let parts = text.split(separator: "-", omittingEmptySubsequences: false)
        guard parts.count == 3, parts[0].count == 4, parts[1].count == 2, parts[2].count == 2 else { return nil }
        let numbers = parts.compactMap { part in part.allSatisfy(\.isWholeNumber) ? Int(part) : nil }
        guard numbers.count == 3 else { return nil }
        self.init(year: numbers[0], month: numbers[1], day: numbers[2])
    }

    /// The day that a moment lies on in a zone.
    public init(of moment: Date, in zone: TimeZone = .current) {
        let seconds = moment.timeIntervalSince1970 + Double(zone.secondsFromGMT(for: moment))
        since1970 = Int64((seconds / 86_400).rounded(.down))
    }

    /// The year, the month from 1, and the day from 1.
    public var parts: (year: Int, month: Int, day: Int) {
        let shifted = Int(since1970) + 719_468
        let era = (shifted >= 0 ? shifted : shifted - 146_096) / 146_097
        let ofEra = shifted - era * 146_097
        let yearOfEra = (ofEra - ofEra / 1_460 + ofEra / 36_524 - ofEra / 146_096) / 365
        let ofYear = ofEra - (365 * yearOfEra + yearOfEra / 4 - yearOfEra / 100)
        let fromMarch = (5 * ofYear + 2) / 153
        let month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
        return (yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, ofYear - (153 * fromMarch + 2) / 5 + 1)
    }

    /// Noon of it in UTC, for formatters: give them that zone too.
    public var noon: Date { Date(timeIntervalSince1970: Double(since1970) * 86_400 + 43_200) }

    public static func < (one: Day, other: Day) -> Bool { one.since1970 < other.since1970 }
    public static func + (day: Day, days: Int) -> Day { Day(since1970: day.since1970 + Int64(days)) }
    public static func - (one: Day, other: Day) -> Int { Int(one.since1970 - other.since1970) }
}

extension Day: CustomStringConvertible {
    /// `2026-11-25`.
    public var description: String {
        let (year, month, day) = parts
        return String(format: "%04d-%02d-%02d", year, month, day)
    }
}

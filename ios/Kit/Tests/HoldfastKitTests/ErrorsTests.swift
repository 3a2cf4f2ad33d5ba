import Foundation
import HoldfastKit
import Support
import XCTest

/// Every error arrives as its own case with its fields, and none of them does harm.
final class ErrorsTests: XCTestCase {
    private func error(_ failing: () throws -> Void) throws -> HoldfastError {
        do { try failing() } catch let error as HoldfastError { return error }
        XCTFail("nothing was thrown")
        throw CancellationError()
    }

    func testNotFoundSaysWhatAndWhy() throws {
        let (coach, _) = try crew(homes())
        let error = try error { _ = try coach.core.member(name: "Bram", date: Day("2026-11-03")!) }
        XCTAssertEqual(error, .NotFound(what: .member, name: "Bram", reason: "No member's log has arrived yet."))
        XCTAssertEqual(error.words, "There is no member \"Bram\". No member's log has arrived yet.")
    }

    func testWhatHasNoNameIsNotFoundWithoutOne() throws {
        let (coach, zoe) = try crew(homes())
        let person = try zoe.core.who().person
        let error = try error { try coach.core.clearFlag(person: person, flag: UUID(), at: coach.now) }
        let reason = "This flag is already cleared, or was never raised."
        XCTAssertEqual(error, .NotFound(what: .flag, name: nil, reason: reason))
        XCTAssertEqual(error.words, reason)
    }

    func testAnExchangesStepNeedsItsBeginning() throws {
        let (_, zoe) = try crew(homes())
        let error = try error { _ = try zoe.core.exchange(did: .listed(files: []), at: zoe.now) }
        XCTAssertEqual(error, .Invalid(field: .exchange, reason: "No exchange is running. Begin one first."))
    }

    func testInvalidNamesTheField() throws {
        let homes = try homes()
        let (_, zoe) = try crew(homes)
        let home = homes.appendingPathComponent("x").path
        let name = try error { _ = try Holdfast.start(home: home, start: start(.athlete, " "), at: zoe.now, keystore: nil) }
        guard case .Invalid(.name, _) = name else { return XCTFail("\(name)") }
        let date = try error { _ = try zoe.core.preview(date: Day(since1970: .max), day: nil, at: zoe.now) }
        let reason = "\(Int64.max) is not a date of the calendar."
        XCTAssertEqual(date, .Invalid(field: .date, reason: reason))
    }

    func testAPlansProblemsComeAllAtOnceWithTheirPlaces() throws {
        let text = String(decoding: try Fixtures.plan(), as: UTF8.self)
            .replacingOccurrences(of: "movement = \"back-squat\"", with: "movement = \"back-squad\"")
            .replacingOccurrences(of: "hold = \"2 min\"", with: "hold = \"2 days\"")
        let error = try error { _ = try checkPlan(sourceName: "wéek 1.toml", text: Data(text.utf8)) }
        guard case let .Plan(source, problems) = error else { return XCTFail("\(error)") }
        XCTAssertEqual(source, "wéek 1.toml")
        let lines = text.components(separatedBy: "\n")
        let places = problems.map { lines[Int($0.line) - 1] }
        XCTAssertEqual(places.count, 2)
        XCTAssertTrue(places[0].contains("back-squad"), places[0])
        XCTAssertTrue(places[1].contains("2 days"), places[1])
        XCTAssertEqual(error.words, "wéek 1.toml has 2 problems to fix.")
    }

    func testAHomeThatCannotBeWrittenSaysWhere() throws {
        // A folder below a file can be made by nobody, not even by root.
        let file = try homes().appendingPathComponent("a file")
        try Data().write(to: file)
        let home = file.appendingPathComponent("home").path
        let error = try error {
            _ = try Holdfast.start(home: home, start: start(.athlete, "Zoë"), at: evening("2026-11-02"), keystore: nil)
        }
        guard case let .Storage(path, reason) = error else { return XCTFail("\(error)") }
        XCTAssertTrue(path.hasPrefix(home), path)
        XCTAssertFalse(reason.isEmpty)
    }

    func testKeysOpenWithTheKeystoreTheyWereWrappedWith() throws {
        let home = try homes().appendingPathComponent("Zoë").path
        let key = Data(0..<32), now = evening("2026-11-02")
        try Holdfast.start(home: home, start: start(.athlete, "Zoë"), at: now, keystore: key).shut()
        for wrong in [Data(1...32), Data(0..<31)] {
            let error = try error { _ = try Holdfast.open(home: home, at: now, keystore: wrong) }
            guard case .Invalid(field: .keystore, reason: _) = error else { return XCTFail("\(error)") }
        }
        XCTAssertEqual(try Holdfast.open(home: home, at: now, keystore: key).who().name, "Zoë")
    }

    func testDataOfANewerVersionIsLeftUntouched() throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        let database = URL(fileURLWithPath: zoe.home).appendingPathComponent("holdfast.db")
        // SQLite keeps the user version at byte 60 of its header (file format, section 1.3).
        var newer = try Data(contentsOf: database)
        newer.replaceSubrange(60..<64, with: [0, 0, 3, 231])
        try newer.write(to: database)
        let error = try error { _ = try Holdfast.open(home: zoe.home, at: zoe.now, keystore: nil) }
        guard case let .TooNew(found, supported) = error else { return XCTFail("\(error)") }
        XCTAssertEqual(found, 999)
        XCTAssertTrue((1..<999).contains(supported))
        XCTAssertEqual(try Data(contentsOf: database), newer)
    }

    func testAPanicIsAnErrorAndTheObjectStillWorks() throws {
        let (coach, _) = try crew(homes())
        let before = try coach.core.export()
        func publish(_ line: String) throws -> PlanSummary {
            let text = try Fixtures.plan() + Data(line.utf8)
            return try coach.core.publish(sourceName: "small-plan.toml", text: text, at: coach.now)
        }
        let error = try error { _ = try publish("# (planted panic)\n") }
        XCTAssertEqual(error, .Unexpected(reason: "a panic that a test planted"))
        XCTAssertEqual(try coach.core.export(), before, "what broke off left nothing behind")
        XCTAssertTrue(try publish("# week 2\n").replaced)
        XCTAssertEqual(try coach.core.export().journal.count, before.journal.count + 1)
    }

    func testAPanicWhileStartingOrOpeningIsAnErrorToo() throws {
        let (home, now) = (try homes().appendingPathComponent("planted").path, evening("2026-11-02"))
        let planted = HoldfastError.Unexpected(reason: "a panic that a test planted")
        let name = "(planted panic)"
        let starting = try error { _ = try Holdfast.start(home: home, start: start(.athlete, name), at: now, keystore: nil) }
        XCTAssertEqual(starting, planted)
        // The start was cut short, so opening writes the profile again.
        let opening = try error { _ = try Holdfast.open(home: home, at: now, keystore: nil) }
        XCTAssertEqual(opening, planted)
    }

    func testAClosedObjectSaysSo() throws {
        let (_, zoe) = try crew(homes())
        try zoe.core.shut()
        try zoe.core.shut()
        let error = try error { _ = try zoe.today() }
        XCTAssertEqual(error, .Invalid(field: .home, reason: "Holdfast is closed. Open it again."))
    }
}

import Foundation
import HoldfastKit

/// Six in the evening of a date, on a boot clock that runs with it.
public func evening(_ date: String) -> Instant {
    let format = ISO8601DateFormatter()
    let ms = Int64(format.date(from: "\(date)T18:00:00Z")!.timeIntervalSince1970) * 1000
    return Instant(wallMs: ms, offsetMin: 0, bootMs: ms, bootId: "test")
}

public func kilograms(_ kg: Int64) -> Mass { Mass(tenNg: kg * 100_000_000_000) }

public func pounds(_ lb: Int64) -> Mass { Mass(tenNg: lb * 45_359_237_000) }

public func start(_ role: Role, _ name: String, _ unit: MassUnit = .kg, chance: UInt8 = 0) -> Start {
    Start(role: role, name: name, unit: unit, chance: Data(chance..<chance + 48))
}

public func squat(_ load: Mass? = nil, _ reps: UInt32? = nil, set: UInt32? = nil) -> Tap {
    .logSet(piece: "Squat", set: set, load: load, reps: reps, reserve: nil)
}

/// What carries files, in memory.
public typealias Carrier = [String: Data]

/// Somebody with a device and a clock that a test sets.
public final class Player {
    public let core: Holdfast
    public let home: String
    public var now = evening("2026-11-02")

    public init(_ homes: URL, _ role: Role, _ name: String, _ unit: MassUnit, chance: UInt8) throws {
        home = homes.appendingPathComponent(name).path
        core = try Holdfast.start(home: home, start: start(role, name, unit, chance: chance), at: now)
    }

    public func goTo(_ date: String) { now = evening(date) }

    public func pass(_ ms: Int64) {
        now = Instant(wallMs: now.wallMs + ms, offsetMin: 0, bootMs: now.bootMs + ms, bootId: now.bootId)
    }

    @discardableResult
    public func tap(_ tap: Tap) throws -> SessionScreen {
        pass(1_000)
        return try core.tap(tap: tap, at: now)
    }

    public func today() throws -> SessionScreen { try core.today(at: now) }

    @discardableResult
    public func exchange(_ carrier: inout Carrier) throws -> ExchangeReport {
        let wanted = try core.offer(listing: list(carrier)).get
        let files = wanted.map { CarriedFile(name: $0, content: carrier[$0]!) }
        let report = try core.absorb(files: files, at: now)
        for file in try core.offer(listing: list(carrier)).put { carrier[file.name] = file.content }
        return report
    }

    private func list(_ carrier: Carrier) -> [ListedFile] {
        carrier.sorted { $0.key < $1.key }.map { ListedFile(name: $0.key, bytes: UInt64($0.value.count)) }
    }
}

/// A coach who has published the small plan, and an athlete who has it and has begun a session.
public func crew(_ homes: URL) throws -> (coach: Player, zoe: Player) {
    var carrier = Carrier()
    let coach = try Player(homes, .coach, "Märta", .kg, chance: 0)
    let zoe = try Player(homes, .athlete, "Zoë", .kg, chance: 60)
    _ = try coach.core.publish(sourceName: "small-plan.toml", text: Fixtures.plan(), at: coach.now)
    try coach.exchange(&carrier)
    try zoe.exchange(&carrier)
    zoe.goTo("2026-11-03")
    try zoe.tap(.begin(day: nil))
    return (coach, zoe)
}

/// What the checks of all three languages share.
public enum Fixtures {
    private static let folder = URL(fileURLWithPath: ProcessInfo.processInfo.environment["HOLDFAST_FIXTURES"]!)

    public static func plan() throws -> Data {
        try Data(contentsOf: folder.appendingPathComponent("small-plan.toml"))
    }

    public static func longerDay() throws -> Data {
        let more = try Data(contentsOf: folder.appendingPathComponent("longer-day.toml"))
        return try plan() + Data("\n".utf8) + more
    }

    public static func screens() throws -> [NSObject] {
        let text = try Data(contentsOf: folder.appendingPathComponent("screens.snap.json"))
        return try JSONSerialization.jsonObject(with: text) as! [NSObject]
    }
}

import Foundation
import HoldfastKit

/// Six in the evening of a date, on a boot clock that runs with it.
public func evening(_ date: String) -> Instant {
    let format = ISO8601DateFormatter()
    let ms = Int64(format.date(from: "\(date)T18:00:00Z")!.timeIntervalSince1970) * 1000
    return Instant(wallMs: ms, offsetMin: 0, bootMs: ms, bootId: "test")
}

/// So much later, by both clocks.
public func later(_ moment: Instant, _ ms: Int64) -> Instant {
    Instant(
        wallMs: moment.wallMs + ms, offsetMin: moment.offsetMin, bootMs: moment.bootMs + ms, bootId: moment.bootId
    )
}

public func kilograms(_ kg: Int64) -> Mass { Mass(tenNg: kg * 100_000_000_000) }

public func pounds(_ lb: Int64) -> Mass { Mass(tenNg: lb * 45_359_237_000) }

public func start(_ role: Role, _ name: String, _ unit: MassUnit = .kg, chance: UInt8 = 0) -> Start {
    Start(role: role, name: name, unit: unit, chance: Data((0..<80).map { chance &+ $0 }))
}

public func squat(_ load: Mass? = nil, _ reps: UInt32? = nil, set: UInt32? = nil) -> Tap {
    .logSet(piece: "Squat", set: set, load: load, reps: reps, reserve: nil)
}

/// Pairs a member's device with the coach's, and gives the screens that both see, in turn.
@discardableResult
public func pair(_ coach: Holdfast, _ member: Holdfast, at now: Instant, chance: UInt8) throws -> [PairScreen] {
    func scan(_ shown: PairScreen) -> PairDid {
        .scan(text: shown.code ?? "", chance: Data(repeating: chance, count: 32))
    }
    let drawn = Data((0..<32).map { chance &+ $0 })
    let invited = try coach.pair(did: .invite(chance: drawn), at: now)
    let answered = try member.pair(did: scan(invited), at: now)
    let opened = try coach.pair(did: scan(answered), at: now)
    let compared = try member.pair(did: scan(opened), at: now)
    let line = opened.lines.firstIndex(of: compared.words.joined(separator: " ")).map { UInt32($0 + 1) }
    let picked = try coach.pair(did: .pick(line: line, label: nil), at: now)
    let matched = try member.pair(did: .match(matches: true, shareEarlier: true), at: now)
    return [invited, answered, opened, compared, picked, matched]
}

/// Somebody with a device and a clock that a test sets.
public final class Player {
    public let core: Holdfast
    public let home: String
    public var now = evening("2026-11-02")

    public init(_ homes: URL, _ role: Role, _ name: String, _ unit: MassUnit, chance: UInt8) throws {
        home = homes.appendingPathComponent(name).path
        core = try Holdfast.start(home: home, start: start(role, name, unit, chance: chance), at: now, keystore: nil)
    }

    public func goTo(_ date: String) { now = evening(date) }

    public func pass(_ ms: Int64) { now = later(now, ms) }

    @discardableResult
    public func tap(_ tap: Tap) throws -> SessionScreen {
        pass(1_000)
        return try core.tap(tap: tap, answers: nil, at: now)
    }

    public func today() throws -> SessionScreen { try core.today(at: now) }

    /// What a host does, without waiting for anybody.
    @discardableResult
    public func exchange(_ carrier: MemoryCarrier) throws -> ExchangeReport {
        var did = ExchangeDid.begin
        while true {
            switch try core.exchange(did: did, at: now) {
            case .listFiles: did = .listed(files: carrier.list())
            case let .get(names):
                let got = carrier.get(names)
                did = .got(files: got.files, unread: got.unread)
            case let .put(files):
                let put = carrier.put(files)
                did = .put(written: put.written, unwritten: put.unwritten)
            case let .done(report): return report
            }
        }
    }
}

/// A coach who has published the small plan, and an athlete who has it and has begun a session.
public func crew(_ homes: URL) throws -> (coach: Player, zoe: Player) {
    let carrier = MemoryCarrier()
    let coach = try Player(homes, .coach, "Märta", .kg, chance: 0)
    let zoe = try Player(homes, .athlete, "Zoë", .kg, chance: 60)
    _ = try coach.core.publish(sourceName: "small-plan.toml", text: Fixtures.plan(), at: coach.now)
    try pair(coach.core, zoe.core, at: coach.now, chance: 1)
    try coach.exchange(carrier)
    try zoe.exchange(carrier)
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

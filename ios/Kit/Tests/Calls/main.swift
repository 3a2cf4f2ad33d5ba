// What calls cost here: `cargo task measure` runs it.
import Foundation
import HoldfastKit
import Support

func middle(_ runs: Int, _ calls: Int, _ call: () throws -> Void) rethrows -> Int {
    var taken: [Int] = []
    // As many runs before warm up.
    for _ in 0..<2 * runs {
        let start = DispatchTime.now().uptimeNanoseconds
        for _ in 0..<calls { try call() }
        taken.append(Int(DispatchTime.now().uptimeNanoseconds - start) / calls)
    }
    return taken.dropFirst(runs).sorted()[runs / 2]
}

let homes = FileManager.default.temporaryDirectory.appendingPathComponent(UUID().uuidString)
try FileManager.default.createDirectory(at: homes, withIntermediateDirectories: true)
defer { try? FileManager.default.removeItem(at: homes) }

let carrier = MemoryCarrier()
let coach = try Player(homes, .coach, "Märta", .kg, chance: 0)
let zoe = try Player(homes, .athlete, "Zoë", .kg, chance: 60)
_ = try coach.core.publish(sourceName: "longer-day.toml", text: Fixtures.longerDay(), at: coach.now)
try coach.exchange(carrier)
try pair(coach.core, zoe.core, at: coach.now, chance: 1)
try zoe.exchange(carrier)
zoe.goTo("2026-11-03")
try zoe.tap(.begin(day: nil))
var taps: UInt32 = 0
let set = try middle(500, 1) {
    let (piece, set) = ("Squat \(1 + taps % 6)", 1 + taps / 6 % 8)
    let tap: Tap = .logSet(piece: piece, set: set, load: kilograms(50), reps: taps % 50, reserve: nil)
    _ = try zoe.core.tap(tap: tap, answers: nil, at: zoe.now)
    taps += 1
}
let screen = try middle(500, 1) { _ = try zoe.core.today(at: zoe.now) }
try zoe.core.shut()
let empty = try middle(500, 1_000) { try zoe.core.shut() }
print("calls: empty \(empty) ns, set \(set) ns, screen \(screen) ns")

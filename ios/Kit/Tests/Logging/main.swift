// Logs the first set over and over, and says so after each tap, until it is killed.
import Foundation
import Support
import HoldfastKit

let core = try Holdfast.open(home: CommandLine.arguments[1], at: evening("2026-11-03"), keystore: nil)
var reps = UInt32(CommandLine.arguments[2])!
while true {
    reps = (reps + 1) % 100
    _ = try core.tap(tap: squat(kilograms(50), reps, set: 1), answers: nil, at: evening("2026-11-03"))
    FileHandle.standardOutput.write(Data("\(reps)\n".utf8))
}

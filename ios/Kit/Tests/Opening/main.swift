// Opens a home and says what came of it.
import HoldfastKit
import Support

let core = try Holdfast.open(home: CommandLine.arguments[1], at: evening("2026-11-03"), keystore: nil)
try core.shut()
print("opened")

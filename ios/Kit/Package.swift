// swift-tools-version: 6.0
import Foundation
import PackageDescription

// The generated code is made by `cargo task bindings`; on a Mac `cargo task ios` adds the library
// for devices, and apps take it from there. `cargo task check swift` names a library of its own in
// HOLDFAST_LIBRARY, which the linker finds by `-Xlinker -L`.
let folder = URL(fileURLWithPath: #filePath).deletingLastPathComponent()
let framework = "Generated/HoldfastCoreFFI.xcframework"
let forDevices = ProcessInfo.processInfo.environment["HOLDFAST_LIBRARY"] == nil
    && FileManager.default.fileExists(atPath: folder.appendingPathComponent(framework).path)

let core: Target = forDevices
    ? .binaryTarget(name: "HoldfastCoreFFI", path: framework)
    : .systemLibrary(name: "HoldfastCoreFFI", path: "Generated/HoldfastCoreFFI")

let package = Package(
    name: "HoldfastKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "HoldfastKit", targets: ["HoldfastKit"])],
    targets: [
        core,
        .target(
            name: "HoldfastCore",
            dependencies: ["HoldfastCoreFFI", "HoldfastTypes"],
            path: "Generated/HoldfastCore",
            linkerSettings: forDevices ? [] : [.linkedLibrary("holdfast")]
        ),
        // What the generated code makes of ours where Swift has a type for it, or lacks one.
        .target(name: "HoldfastTypes"),
        .target(name: "HoldfastKit", dependencies: ["HoldfastCore"]),
        // What only tests use: a crew with clocks that a test sets, and small programs.
        .target(name: "Support", dependencies: ["HoldfastKit", "HoldfastCore"], path: "Tests/Support"),
        .executableTarget(name: "Calls", dependencies: ["Support", "HoldfastCore"], path: "Tests/Calls"),
        .executableTarget(name: "Logging", dependencies: ["Support", "HoldfastCore"], path: "Tests/Logging"),
        .executableTarget(name: "Opening", dependencies: ["Support", "HoldfastCore"], path: "Tests/Opening"),
        .testTarget(
            name: "HoldfastKitTests",
            dependencies: ["Support", "HoldfastCore", "HoldfastCoreFFI", "Logging", "Opening"]
        ),
    ],
    swiftLanguageModes: [.v6]
)

import HoldfastCore

/// What takes files from device to device: a shared folder, a stick, a store on the net.
///
/// It is called on no actor, and may take its time: taps go on meanwhile. Where it waits it should suspend,
/// for its thread is one that all tasks share. What it throws ends the exchange and reaches whoever asked
/// for it; what was taken in by then is kept.
public protocol Carrier: Sendable {
    /// The files that are there.
    func list() async throws -> [ListedFile]

    /// Fetches files. One that is gone meanwhile is left out; one that cannot be read is named as unread.
    func get(_ names: [String]) async throws -> (files: [CarriedFile], unread: [FailedFile])

    /// Writes each file, unless its name is there with as many bytes. Counts those that were not there
    /// before, and names those that cannot be written: one of them keeps nobody from bringing the others.
    func put(_ files: [CarriedFile]) async throws -> (written: UInt32, unwritten: [FailedFile])
}

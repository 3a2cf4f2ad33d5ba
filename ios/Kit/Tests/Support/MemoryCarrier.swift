import Foundation
import HoldfastKit

/// Carries files in memory.
public final class MemoryCarrier: Carrier, @unchecked Sendable {
    private let lock = NSLock()
    private var files: [String: Data] = [:]
    private var unreadable: Set<String> = []

    public init() {}

    /// Files that are listed and cannot be read.
    public func tear(_ names: [String]) { lock.withLock { unreadable = Set(names) } }

    public func list() -> [ListedFile] {
        let files = lock.withLock { self.files }
        return files.sorted { $0.key < $1.key }.map { ListedFile(name: $0.key, bytes: UInt64($0.value.count)) }
    }

    public func get(_ names: [String]) -> (files: [CarriedFile], unread: [UnreadFile]) {
        lock.withLock {
            let unread = names.filter(unreadable.contains).map { UnreadFile(name: $0, reason: "it is torn") }
            let read = names.filter { !unreadable.contains($0) }
            return (read.map { CarriedFile(name: $0, content: files[$0]!) }, unread)
        }
    }

    public func put(_ files: [CarriedFile]) -> UInt32 {
        lock.withLock {
            let new = files.filter { self.files[$0.name]?.count != $0.content.count }
            for file in new { self.files[file.name] = file.content }
            return UInt32(new.count)
        }
    }
}

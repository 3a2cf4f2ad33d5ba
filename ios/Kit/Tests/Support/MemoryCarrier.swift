import Foundation
import HoldfastKit

/// Carries files in memory.
public final class MemoryCarrier: Carrier, @unchecked Sendable {
    private let lock = NSLock()
    private var files: [String: Data] = [:]
    private var unreadable: Set<String> = []

    private var full: (String) -> Bool = { _ in false }

    public init() {}

    /// Files that cannot be written.
    public func fill(_ full: @escaping (String) -> Bool) { lock.withLock { self.full = full } }

    /// Files that are listed and cannot be read.
    public func tear(_ names: [String]) { lock.withLock { unreadable = Set(names) } }

    public func list() -> [ListedFile] {
        let files = lock.withLock { self.files }
        return files.sorted { $0.key < $1.key }.map { ListedFile(name: $0.key, bytes: UInt64($0.value.count)) }
    }

    public func get(_ names: [String]) -> (files: [CarriedFile], unread: [FailedFile]) {
        lock.withLock {
            let unread = names.filter(unreadable.contains).map { FailedFile(name: $0, reason: "it is torn") }
            let read = names.filter { !unreadable.contains($0) }
            return (read.map { CarriedFile(name: $0, content: files[$0]!) }, unread)
        }
    }

    public func put(_ files: [CarriedFile]) -> (written: UInt32, unwritten: [FailedFile]) {
        lock.withLock {
            let unwritten = files.filter { full($0.name) }.map { FailedFile(name: $0.name, reason: "it is full") }
            let new = files.filter { !full($0.name) && self.files[$0.name]?.count != $0.content.count }
            for file in new { self.files[file.name] = file.content }
            return (UInt32(new.count), unwritten)
        }
    }
}

import Foundation

/// An identity as it crosses.
extension UUID {
    public init(sixteen bytes: Data) {
        self.init(uuid: bytes.withUnsafeBytes { $0.loadUnaligned(as: uuid_t.self) })
    }

    public var sixteen: Data { withUnsafeBytes(of: uuid) { Data($0) } }
}

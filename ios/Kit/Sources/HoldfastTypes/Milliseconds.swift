/// A length of time as it crosses; what is less than a millisecond is cut off.
extension Duration {
    public var milliseconds: Int64 {
        components.seconds * 1_000 + components.attoseconds / 1_000_000_000_000_000
    }
}

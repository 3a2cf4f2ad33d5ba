import HoldfastCore

/// The moment it is, by the device's two clocks. The core never asks for the time; it is told.
///
/// On an Apple device: `Date`, the zone's offset, `mach_continuous_time` and `kern.bootsessionuuid`.
public typealias DeviceClock = @Sendable () -> Instant

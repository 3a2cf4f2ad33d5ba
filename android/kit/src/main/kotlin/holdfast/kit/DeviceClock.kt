package holdfast.kit

import holdfast.core.Instant

/**
 * The device's two clocks. The core never asks for the time; it is told.
 *
 * On Android: `System.currentTimeMillis()`, the zone's offset, `SystemClock.elapsedRealtime()` and
 * `Settings.Global.BOOT_COUNT`.
 */
public fun interface DeviceClock {
    /** The moment it is. */
    public fun now(): Instant
}

package holdfast.kit

import holdfast.core.Instant

/**
 * The device's two clocks. The core never asks for the time; it is told.
 *
 * On Android: `System.currentTimeMillis()`, the zone's offset, `SystemClock.elapsedRealtime()`, and as the
 * boot's name the kernel's own `boot_id`. The count of boots alone names none: another phone has the same.
 */
public fun interface DeviceClock {
    /** The moment it is. */
    public fun now(): Instant
}

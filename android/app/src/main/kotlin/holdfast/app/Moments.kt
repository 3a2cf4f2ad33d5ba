package holdfast.app

import android.os.SystemClock
import holdfast.core.Instant
import holdfast.kit.DeviceClock
import java.util.TimeZone

/** The phone's two clocks, and the boot that the second one counts from. The only place that reads them. */
internal class Moments(private val boot: String) : DeviceClock {
    override fun now(): Instant {
        val wall = System.currentTimeMillis()
        // Android: counts sleep. uptimeMillis, nanoTime, handlers and delay() all stop in it.
        val sinceBoot = SystemClock.elapsedRealtime()
        return Instant(wall, TimeZone.getDefault().getOffset(wall) / MINUTE_MS, sinceBoot, boot)
    }

    private companion object {
        const val MINUTE_MS = 60_000
    }
}

package holdfast.app

import android.content.Context
import android.content.Intent
import android.os.SystemClock
import holdfast.core.Language
import holdfast.core.SessionScreen
import holdfast.core.platformWords
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.asStateFlow

/**
 * Looks at each screen of the session for a clock that runs: gives its cues, and shows it outside the app.
 */
internal class ClockWatch(
    private val context: Context,
    private val cues: Cues,
    private val tell: (String?) -> Unit,
) {
    private val clock = MutableStateFlow<ShownClock?>(null)
    private val notification = ClockNotification(context)
    private var hasService = false

    /** The clock that runs or stands; null while there is none. */
    val shown: StateFlow<ShownClock?> = clock.asStateFlow()

    /** Takes in a screen. */
    fun see(screen: SessionScreen, language: Language) {
        val now = screen.shownClock(SystemClock.elapsedRealtime())
        if (screen.cues.isEmpty()) cues.cancel() else cues.follow(screen.cues, language)
        val before = clock.value
        if (now == null || !now.isSameAs(before)) clock.value = now
        when {
            now == null -> ended()
            before == null -> begun(now)
            !hasService && !now.isSameAs(before) -> notification.post(now)
        }
    }

    /** Shows the clock again after somebody set the wall clock: the system's countdown goes by that. */
    fun wallClockWasSet() {
        val now = clock.value ?: return
        // A new one of the same content, so that whoever looks sees a change.
        clock.value = now.copy(endsAtBootMs = now.endsAtBootMs?.plus(1))
        if (!hasService) notification.post(now)
    }

    /** The service says that it shows the clock, or that it could not. */
    fun serviceStands(stands: Boolean) {
        hasService = stands
        val now = clock.value
        if (!stands && now != null) {
            notification.post(now)
            tell(platformWords().cuesHereOnly)
        }
    }

    private fun begun(now: ShownClock) {
        // It may fail at any time, and nothing but cues behind a locked screen is lost by it.
        try {
            context.startForegroundService(Intent(context, ClockService::class.java))
            hasService = true
        } catch (_: IllegalStateException) {
            serviceStands(false)
        } catch (_: SecurityException) {
            serviceStands(false)
        }
    }

    private fun ended() {
        if (!hasService) notification.remove()
        hasService = false
    }
}

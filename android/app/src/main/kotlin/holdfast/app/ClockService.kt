package holdfast.app

import android.app.Notification
import android.app.Service
import android.content.Intent
import android.content.pm.ServiceInfo
import android.os.Build
import android.os.Handler
import android.os.IBinder
import android.os.Looper
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Job
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch

/**
 * Keeps the process alive, and its sound allowed, while a clock runs. It holds nothing: the clock is what the
 * core has on disk, so the system may end this at any moment.
 *
 * Android: it is of the type "health", which is for exercise trackers and has no time limit.
 */
internal open class ClockService : Service() {
    private val app
        get() = application as HoldfastApplication

    private val scope = CoroutineScope(Job() + MainThread)
    private val handler = Handler(Looper.getMainLooper())
    private val leaves = Runnable {
        stopForeground(STOP_FOREGROUND_REMOVE)
        ends()
    }
    private var following: Job? = null
    private var start = 0

    override fun onBind(intent: Intent?): IBinder? = null

    override fun onStartCommand(intent: Intent?, flags: Int, startId: Int): Int {
        start = startId
        if (intent != null) {
            // Android: who was started for the foreground has to go there within seconds, even if only to
            // leave.
            if (stand()) follow()
            return START_STICKY
        }
        // Made anew by the system after a crash: only an open clock is a reason to be here.
        scope.launch {
            app.look()
            if (app.watch.shown.value != null && stand()) follow() else ends()
        }
        return START_STICKY
    }

    override fun onDestroy() {
        handler.removeCallbacks(leaves)
        scope.cancel()
    }

    /** Goes to the foreground; false where the system does not let it. */
    private fun stand(): Boolean {
        val notification = ClockNotification(this).of(app.watch.shown.value)
        try {
            stands(notification)
        } catch (_: IllegalStateException) {
            return fallen()
        } catch (_: SecurityException) {
            return fallen()
        }
        app.watch.serviceStands(true)
        return true
    }

    /** What the system may refuse at any time. */
    protected open fun stands(notification: Notification) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.UPSIDE_DOWN_CAKE) {
            startForeground(ClockNotification.ID, notification, ServiceInfo.FOREGROUND_SERVICE_TYPE_HEALTH)
        } else {
            startForeground(ClockNotification.ID, notification)
        }
    }

    private fun fallen(): Boolean {
        app.watch.serviceStands(false)
        ends()
        return false
    }

    /** Android: ended without its number, a start that is on its way would fail, and the process with it. */
    private fun ends() {
        stopSelf(start)
    }

    /** Shows each change, and leaves when no clock runs any more. */
    private fun follow() {
        following?.cancel()
        following =
            scope.launch {
                app.watch.shown.collect { clock ->
                    handler.removeCallbacks(leaves)
                    if (clock != null) return@collect ClockNotification(this@ClockService).post(clock)
                    // Android: the sound of a process without a service is cut, and the last words take a
                    // moment.
                    handler.postDelayed(leaves, LAST_WORDS_MS)
                }
            }
    }

    companion object {
        /** So long the last cue is heard. */
        const val LAST_WORDS_MS: Long = 4_000
    }
}

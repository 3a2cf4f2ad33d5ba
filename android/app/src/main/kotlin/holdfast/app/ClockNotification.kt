package holdfast.app

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.SystemClock
import holdfast.core.PlatformWords
import holdfast.core.platformWords

/**
 * The notification of a running clock, drawn by the system's own countdown: nothing of ours wakes up for it.
 */
internal class ClockNotification(private val context: Context) {
    private val manager = context.getSystemService(NotificationManager::class.java)

    /** What stands there; whatever it shows now is made of this moment's clocks. */
    fun of(clock: ShownClock?): Notification {
        val words = platformWords()
        manager.createNotificationChannel(
            NotificationChannel(CHANNEL, words.clockChannel, NotificationManager.IMPORTANCE_LOW)
        )
        val shown = builder(clock, words, isPublic = false)
        // Over the lock screen anybody reads: no movement, and no part of a body.
        shown.setVisibility(Notification.VISIBILITY_PRIVATE)
        shown.setPublicVersion(builder(clock, words, isPublic = true).build())
        return shown.build()
    }

    /** Shows it without a service, where the system lets none run. */
    fun post(clock: ShownClock) {
        manager.notify(ID, of(clock))
    }

    /** Takes it away. */
    fun remove() {
        manager.cancel(ID)
    }

    private fun builder(clock: ShownClock?, words: PlatformWords, isPublic: Boolean): Notification.Builder {
        val general = if (clock?.isPaused == true) words.clockIsPaused else words.clockRuns
        val title = clock?.title?.takeUnless { isPublic } ?: general
        val text = clock?.about?.takeUnless { isPublic }
        val built =
            Notification.Builder(context, CHANNEL)
                .setSmallIcon(android.R.drawable.ic_lock_idle_alarm)
                .setContentTitle(title)
                .setContentText(text ?: general.takeIf { it != title })
                .setContentIntent(opens())
                .setCategory(Notification.CATEGORY_STOPWATCH)
                .setOngoing(true)
                .setOnlyAlertOnce(true)
                .setShowWhen(false)
        val ends = clock?.endsAtBootMs
        if (ends != null && !clock.isPaused) {
            // Android: the countdown's base is worked out from the wall clock each time it is drawn anew.
            val wall = System.currentTimeMillis() + ends - SystemClock.elapsedRealtime()
            built.setWhen(wall).setShowWhen(true).setUsesChronometer(true).setChronometerCountDown(true)
        }
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) {
            // Android: otherwise it may be held back for ten seconds.
            built.setForegroundServiceBehavior(Notification.FOREGROUND_SERVICE_IMMEDIATE)
        }
        return built
    }

    private fun opens(): PendingIntent {
        val open = Intent(context, HoldfastActivity::class.java).setFlags(Intent.FLAG_ACTIVITY_SINGLE_TOP)
        return PendingIntent.getActivity(context, 0, open, PendingIntent.FLAG_IMMUTABLE)
    }

    companion object {
        /** Of the one notification there is. */
        const val ID: Int = 1

        /** Of the one kind of notification there is. */
        const val CHANNEL: String = "clock"
    }
}

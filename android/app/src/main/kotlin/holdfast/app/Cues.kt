package holdfast.app

import android.app.AlarmManager
import android.content.Context
import android.media.AudioFocusRequest
import android.media.AudioManager
import android.os.Handler
import android.os.HandlerThread
import android.os.Looper
import android.os.PowerManager
import android.os.SystemClock
import android.view.accessibility.AccessibilityManager
import holdfast.core.CueKind
import holdfast.core.CueView
import holdfast.core.Heard
import holdfast.core.Language

/**
 * Gives the cues of the clock that runs: tone, then haptic, then speech, each when it is due by the boot
 * clock.
 *
 * Every new list takes back all of the one before, but for what was due already. A cue that comes too late is
 * dropped, for the core lists it as gone by. After each cue the core is asked again: it lists so many and no
 * more, and by then the clock is in another phase. Nothing is logged here: that a cue was scheduled says
 * nothing about whether it was given.
 */
internal class Cues(
    private val context: Context,
    private val speech: Speech,
    private val tones: Tones = Tones(),
    private val pulses: Pulses = Pulses(context),
    private val gave: (CueView) -> Unit = {},
    private val heard: () -> Heard = { Heard.WORDS },
    private val askAgain: () -> Unit,
) {
    private val thread = HandlerThread("cues").apply { start() }
    private val handler = Handler(thread.looper)
    private val alarms = context.getSystemService(AlarmManager::class.java)
    private val audio = context.getSystemService(AudioManager::class.java)
    private val wake =
        context
            .getSystemService(PowerManager::class.java)
            .newWakeLock(PowerManager.PARTIAL_WAKE_LOCK, "holdfast:cues")
            .apply { setReferenceCounted(false) }
    private val focus =
        AudioFocusRequest.Builder(AudioManager.AUDIOFOCUS_GAIN_TRANSIENT_MAY_DUCK)
            .setAudioAttributes(guidance)
            .build()
    private var hasFocus = false
    private var alarm: AlarmManager.OnAlarmListener? = null
    private var ahead: List<CueView> = emptyList()
    private var behind: CueView? = null

    /** Of the thread that gives them. */
    val looper: Looper
        get() = thread.looper

    /** Counts the lists: what is left of an older one is worth nothing. */
    @Volatile
    var generation: Int = 0
        private set

    /** Takes back what was scheduled and schedules these. */
    fun follow(cues: List<CueView>, language: Language) {
        val now = ++generation
        speech.prepare(cues.map { it.words }.distinct(), language)
        handler.post { if (now == generation) begin(cues, now) }
    }

    /** Takes back everything. */
    fun cancel() {
        val now = ++generation
        handler.post {
            if (now != generation) return@post
            takeBack()
            letGo()
        }
    }

    /** Ends for good. */
    fun release() {
        cancel()
        handler.post {
            tones.release()
            speech.release()
        }
        thread.quitSafely()
    }

    private fun begin(cues: List<CueView>, now: Int) {
        // A screen is read each second, and cues are due on whole ones. One that was due when this list was
        // made is in the
        // old list alone, or in both.
        val due = ahead.takeWhile { it.dueBootMs <= SystemClock.elapsedRealtime() }
        due.forEach(::inTime)
        takeBack()
        ahead = cues.sortedBy { it.dueBootMs }.dropWhile(::isBehind)
        if (ahead.isNotEmpty()) handler.removeCallbacksAndMessages(IDLE)
        next(now)
    }

    /** True for the cue that was given last, and for what came before it. */
    private fun isBehind(cue: CueView): Boolean {
        val last = behind ?: return false
        val apart = cue.dueBootMs - last.dueBootMs
        return if (cue.kind == last.kind && cue.turn == last.turn) apart in -SAME_MS..SAME_MS
        else apart < -SAME_MS
    }

    private fun takeBack() {
        handler.removeCallbacksAndMessages(SCHEDULED)
        alarm?.let(alarms::cancel)
        alarm = null
        ahead = emptyList()
    }

    private fun next(now: Int) {
        val cue = ahead.firstOrNull() ?: return letGo()
        val left = cue.dueBootMs - SystemClock.elapsedRealtime()
        if (left > LONG_MS) return sleepUntil(cue.dueBootMs, now)
        // Android: a lock without an end outlives a crash of whoever holds it.
        wake.acquire((left + SPARE_MS).coerceAtLeast(SPARE_MS))
        handler.postDelayed({ if (now == generation) fire(now) }, SCHEDULED, left.coerceAtLeast(0))
    }

    /**
     * A long rest: the processor may sleep until shortly before its end.
     *
     * Android: an alarm with a listener needs no permission. It dies with the process, and nothing is lost by
     * that.
     */
    private fun sleepUntil(dueBootMs: Long, now: Int) {
        if (wake.isHeld) wake.release()
        val wakes = AlarmManager.OnAlarmListener { if (now == generation) next(now) }
        alarm = wakes
        try {
            alarms.setExact(
                AlarmManager.ELAPSED_REALTIME_WAKEUP,
                dueBootMs - EARLY_MS,
                "holdfast:rest",
                wakes,
                handler,
            )
        } catch (_: SecurityException) {
            // A maker that wants a permission even for these: then the phone is kept awake through the rest.
            alarm = null
            val left = dueBootMs - SystemClock.elapsedRealtime()
            wake.acquire(left + SPARE_MS)
            handler.postDelayed({ if (now == generation) fire(now) }, SCHEDULED, left)
        }
    }

    private fun fire(now: Int) {
        val cue = ahead.firstOrNull() ?: return
        val late = SystemClock.elapsedRealtime() - cue.dueBootMs
        // Android: a handler's clock stands still while the phone sleeps.
        if (late < 0) return next(now)
        ahead = ahead.drop(1)
        inTime(cue)
        next(now)
        askAgain()
    }

    private fun inTime(cue: CueView) {
        behind = cue
        if (SystemClock.elapsedRealtime() - cue.dueBootMs <= LATEST_MS) give(cue)
    }

    /** Gives a cue now, with no clock that runs: so that somebody hears and feels it beforehand. */
    fun tryOut(words: String, language: Language) {
        speech.prepare(listOf(words), language)
        // What is to be spoken is made ready first.
        handler.postDelayed(
            {
                give(Rhythm.of(CueKind.CONTRACT), words)
                quietLater()
            },
            TRIED_MS,
        )
    }

    private fun give(cue: CueView) {
        gave(cue)
        give(Rhythm.of(cue.kind), cue.words)
        val following = ahead.firstOrNull()
        if (following == null || following.dueBootMs - cue.dueBootMs >= JOINED_MS) quietLater()
    }

    private fun give(rhythm: Rhythm, words: String) {
        val wanted = heard()
        if (wanted != Heard.NOTHING) {
            // Android: "failed" is no reason to be silent, the tone may still be heard.
            if (!hasFocus)
                hasFocus = audio.requestAudioFocus(focus) == AudioManager.AUDIOFOCUS_REQUEST_GRANTED
            tones.play(rhythm)
        }
        pulses.give(rhythm)
        // A screen reader says the words itself, from the line that shows the phase.
        if (wanted == Heard.WORDS && !isReadAloud()) speech.say(words)
    }

    private fun isReadAloud() =
        context.getSystemService(AccessibilityManager::class.java)?.isTouchExplorationEnabled == true

    private fun quietLater() {
        handler.removeCallbacksAndMessages(QUIET)
        handler.postDelayed(::quiet, QUIET, JOINED_MS)
    }

    private fun quiet() {
        if (hasFocus) audio.abandonAudioFocusRequest(focus)
        hasFocus = false
    }

    private fun letGo() {
        if (wake.isHeld) wake.release()
        quietLater()
        // The engine is another process, which need not live while nobody trains.
        handler.removeCallbacksAndMessages(IDLE)
        handler.postDelayed(speech::release, IDLE, IDLE_MS)
    }

    companion object {
        /** A cue later than this is dropped. */
        const val LATEST_MS: Long = 750

        /** One cue in two lists is due at the same time but for what reading a clock takes. */
        const val SAME_MS: Long = 50

        /** From this gap on the processor may sleep. */
        const val LONG_MS: Long = 5 * 60_000L

        /** An alarm wakes so long before the cue: alarms are late, handlers are not. */
        const val EARLY_MS: Long = 10_000

        /** The lock that keeps the phone awake ends so long after the cue, whatever happens. */
        const val SPARE_MS: Long = 10_000

        /** So long after somebody asked for one to try it comes. */
        const val TRIED_MS: Long = 500

        /** Cues closer together than this share the hold on other sound. */
        const val JOINED_MS: Long = 3_000

        /** So long after the last cue nothing more is spoken. */
        const val IDLE_MS: Long = 60_000

        private val IDLE = Any()
        private val SCHEDULED = Any()
        private val QUIET = Any()
    }
}

package holdfast.app

import android.app.AlarmManager
import android.media.AudioManager
import android.os.Looper
import android.os.SystemClock
import android.os.VibrationAttributes
import android.os.Vibrator
import android.view.accessibility.AccessibilityManager
import holdfast.core.CueKind
import holdfast.core.CueView
import holdfast.core.Heard
import holdfast.core.Language
import java.time.Duration
import kotlin.math.abs
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue
import kotlin.time.Duration.Companion.milliseconds
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowPowerManager
import org.robolectric.shadows.ShadowSystemClock

@RunWith(RobolectricTestRunner::class)
class CuesTest {
    private val given = mutableListOf<String>()
    private var passed = 0
    private val alarms = app.getSystemService(AlarmManager::class.java)
    private val audio = app.getSystemService(AudioManager::class.java)
    private val vibrator = app.getSystemService(Vibrator::class.java)
    private val tones = mutableListOf<Rhythm>()
    private val order = mutableListOf<String>()
    private var released = 0
    private var wanted = Heard.WORDS
    private val speech =
        object : Speech(app, folder("speech")) {
            override fun say(sentence: String): Boolean {
                order += if (shadowOf(vibrator).pattern == null) "speech before haptic" else "speech"
                return true
            }

            override fun release() {
                super.release()
                released += 1
            }
        }
    private val heard =
        object : Tones() {
            override fun play(rhythm: Rhythm): Boolean {
                order += if (shadowOf(vibrator).pattern == null) "tone" else "tone after haptic"
                return super.play(rhythm).also { if (it) tones += rhythm }
            }
        }
    private val cues =
        Cues(app, speech, heard, gave = { given += "${it.kind} ${it.turn}" }, heard = { wanted }) {
            passed += 1
        }

    @AfterTest fun end() = cues.release()

    private fun cue(inMs: Long, kind: CueKind = CueKind.HALFWAY, turn: Int = 1) =
        CueView(inMs.milliseconds, SystemClock.elapsedRealtime() + inMs, kind, turn.toUInt(), "words")

    private fun idle() = shadowOf(cues.looper).idle()

    private fun pass(ms: Long) {
        ShadowSystemClock.advanceBy(Duration.ofMillis(ms))
        idle()
        shadowOf(Looper.getMainLooper()).idle()
    }

    private fun follow(vararg of: CueView) {
        cues.follow(of.toList(), Language.EN)
        idle()
    }

    private fun wakeLock() = ShadowPowerManager.getLatestWakeLock()

    @Test
    fun eachIsGivenWhenItIsDueByTheBootClock() {
        follow(cue(10_000, CueKind.HALFWAY), cue(20_000, CueKind.LAST_SECONDS), cue(30_000, CueKind.END))
        pass(9_999)
        assertEquals(emptyList(), given)
        pass(1)
        assertEquals(listOf("HALFWAY 1"), given)
        pass(10_000)
        pass(10_000)
        assertEquals(listOf("HALFWAY 1", "LAST_SECONDS 1", "END 1"), given)
        assertEquals(3, passed, "the core is asked again after each")
    }

    @Test
    fun whatIsHeardIsChosenAndWhatIsFeltStays() {
        for ((choice, expected) in
            listOf(
                Heard.WORDS to listOf("tone", "speech"),
                Heard.TONES to listOf("tone"),
                Heard.NOTHING to emptyList(),
            )) {
            wanted = choice
            order.clear()
            val before = given.size
            follow(cue(10_000, CueKind.CONTRACT))
            pass(10_000)
            assertEquals(before + 1, given.size)
            assertEquals(
                expected.map { it.substringBefore(' ') },
                order.map { it.substringBefore(' ') },
                "$choice",
            )
            assertEquals(
                Pulses.pattern(Rhythm.CHANGE).toList(),
                shadowOf(vibrator).pattern?.toList(),
                "$choice",
            )
        }
    }

    @Test
    fun oneIsTriedWithNoClockThatRuns() {
        cues.tryOut("push", Language.EN)
        pass(Cues.TRIED_MS)
        assertEquals(listOf("tone", "speech"), order)
        assertEquals(listOf(Rhythm.CHANGE), tones)
        assertEquals(emptyList(), given, "no cue of a clock was given")
    }

    @Test
    fun whatComesTooLateIsDropped() {
        follow(cue(10_000, CueKind.CONTRACT), cue(20_000, CueKind.RELEASE), cue(40_000, CueKind.END))
        // The phone slept through it, for a moment longer than is allowed.
        ShadowSystemClock.advanceBy(Duration.ofMillis(20_751))
        idle()
        assertEquals(emptyList(), given)
        pass(19_249)
        assertEquals(listOf("END 1"), given)
        follow(cue(1_000, CueKind.BEGIN))
        ShadowSystemClock.advanceBy(Duration.ofMillis(1_750))
        idle()
        assertEquals(listOf("END 1", "BEGIN 1"), given, "750 ms late is not too late")
    }

    @Test
    fun aNewListTakesBackTheOldOne() {
        follow(cue(10_000, CueKind.CONTRACT))
        val first = cues.generation
        pass(4_000)
        follow(cue(20_000, CueKind.RELEASE))
        assertTrue(cues.generation > first)
        pass(7_000)
        assertEquals(emptyList(), given)
        pass(13_000)
        assertEquals(listOf("RELEASE 1"), given)
        cues.follow(listOf(cue(5_000, CueKind.END)), Language.EN)
        cues.cancel()
        idle()
        pass(6_000)
        assertEquals(listOf("RELEASE 1"), given)
    }

    @Test
    fun aScreenThatIsReadAMomentAfterACueWasDueNeitherSwallowsNorDoublesIt() {
        val due = cue(10_000, CueKind.SWITCH_SIDE)
        val later = cue(30_000, CueKind.END)
        follow(due, later)
        // The clock reaches it, and a new list without it comes before the thread of cues had its turn.
        shadowOf(cues.looper).pause()
        ShadowSystemClock.advanceBy(Duration.ofMillis(10_002))
        cues.follow(listOf(later), Language.EN)
        shadowOf(cues.looper).unPause()
        idle()
        assertEquals(listOf("SWITCH_SIDE 1"), given)
        // And one that was read at the very moment still lists it.
        follow(due, later)
        assertEquals(listOf("SWITCH_SIDE 1"), given)
    }

    @Test
    fun aToneAHapticAndTheFocusComeWithIt() {
        follow(cue(1_000, CueKind.SWITCH_SIDE))
        pass(1_000)
        val pattern = shadowOf(vibrator).pattern
        assertEquals(listOf(0L, 180L, 120L, 180L), pattern.toList())
        assertEquals(
            VibrationAttributes.USAGE_ALARM,
            (shadowOf(vibrator).vibrationAttributesFromLastVibration as VibrationAttributes).usage,
        )
        val request = assertNotNull(shadowOf(audio).lastAudioFocusRequest)
        assertEquals(AudioManager.AUDIOFOCUS_GAIN_TRANSIENT_MAY_DUCK, request.audioFocusRequest.focusGain)
        assertEquals(listOf(Rhythm.CHANGE), tones)
        assertNull(shadowOf(audio).lastAbandonedAudioFocusRequest)
        pass(3_000)
        assertNotNull(shadowOf(audio).lastAbandonedAudioFocusRequest)
    }

    @Test
    fun theToneComesFirstThenTheHapticThenSpeech() {
        follow(cue(1_000, CueKind.CONTRACT))
        pass(1_000)
        assertEquals(listOf("tone", "speech"), order)
    }

    @Test
    fun aScreenReaderSpeaksForItself() {
        shadowOf(app.getSystemService(AccessibilityManager::class.java)).setTouchExplorationEnabled(true)
        follow(cue(1_000, CueKind.CONTRACT))
        pass(1_000)
        assertEquals(listOf("tone"), order)
    }

    @Test
    fun theSpeechEngineIsLetGoAMinuteAfterTheLastCue() {
        follow(cue(1_000, CueKind.END))
        pass(1_000)
        pass(59_999)
        assertEquals(0, released)
        pass(1)
        assertEquals(1, released)
    }

    @Test
    fun aFocusThatIsRefusedLeavesToneAndHaptic() {
        shadowOf(audio).setNextFocusRequestResponse(AudioManager.AUDIOFOCUS_REQUEST_FAILED)
        follow(cue(1_000, CueKind.END))
        pass(1_000)
        assertEquals(listOf(Rhythm.END), tones)
        assertEquals(6, shadowOf(vibrator).pattern.size)
        pass(4_000)
        assertNull(shadowOf(audio).lastAbandonedAudioFocusRequest, "what was not given is not given back")
    }

    @Test
    fun thePhoneIsKeptAwakeUntilTheLastOneAndNoLonger() {
        follow(cue(60_000, CueKind.END))
        assertTrue(wakeLock().isHeld)
        pass(60_000)
        assertEquals(listOf("END 1"), given)
        assertFalse(wakeLock().isHeld)
    }

    @Test
    fun theLockEndsByItselfWhateverHappens() {
        follow(cue(60_000, CueKind.END))
        // The thread of cues hangs.
        shadowOf(cues.looper).pause()
        ShadowSystemClock.advanceBy(Duration.ofMillis(69_000))
        shadowOf(Looper.getMainLooper()).idle()
        assertTrue(wakeLock().isHeld)
        ShadowSystemClock.advanceBy(Duration.ofMillis(1_100))
        shadowOf(Looper.getMainLooper()).idle()
        assertFalse(wakeLock().isHeld)
        shadowOf(cues.looper).unPause()
    }

    @Test
    fun throughALongRestThePhoneSleepsAndAnAlarmWakesIt() {
        follow(cue(8 * 60_000, CueKind.REST_OVER, 3))
        assertFalse(wakeLock()?.isHeld ?: false)
        val alarm = assertNotNull(shadowOf(alarms).peekNextScheduledAlarm())
        assertEquals(AlarmManager.ELAPSED_REALTIME_WAKEUP, alarm.type)
        assertEquals(SystemClock.elapsedRealtime() + 8 * 60_000 - 10_000, alarm.triggerAtTime)
        assertNull(alarm.operation, "an alarm with an intent needs a permission")
        pass(8 * 60_000 - 10_000)
        shadowOf(alarms).fireAlarm(alarm)
        idle()
        assertTrue(wakeLock().isHeld)
        pass(10_000)
        assertEquals(listOf("REST_OVER 3"), given)
    }

    @Test
    fun withoutThePermissionForExactAlarmsALongRestEndsOnTime() {
        org.robolectric.shadows.ShadowAlarmManager.setCanScheduleExactAlarms(false)
        follow(cue(8 * 60_000, CueKind.REST_OVER, 3))
        pass(8 * 60_000 - 10_000)
        shadowOf(alarms).peekNextScheduledAlarm()?.let { shadowOf(alarms).fireAlarm(it) }
        idle()
        pass(10_000)
        assertEquals(listOf("REST_OVER 3"), given)
    }

    @Test
    fun aTapInALongRestTakesItsAlarmBack() {
        follow(cue(8 * 60_000, CueKind.REST_OVER, 3))
        cues.cancel()
        idle()
        assertNull(shadowOf(alarms).nextScheduledAlarm)
    }

    @Test
    fun everyKindHasARhythmShorterThanItsWords() {
        for (rhythm in Rhythm.entries) {
            assertTrue(Pulses.pattern(rhythm).sum() < 1_500)
            val wave = Tones.wave(rhythm)
            assertTrue(abs(Pulses.pattern(rhythm).sum() - wave.size * 1000L / 22_050) <= 1)
            assertEquals(0, wave.first().toInt())
            assertTrue(wave.maxOf { it } > 20_000)
        }
        assertEquals(Rhythm.entries.toSet(), CueKind.entries.map(Rhythm::of).toSet())
    }
}

package holdfast.app

import android.app.ForegroundServiceStartNotAllowedException
import android.app.Notification
import android.app.NotificationManager
import android.app.Service
import android.content.ContextWrapper
import android.content.Intent
import android.content.pm.ServiceInfo
import android.os.Looper
import android.os.SystemClock
import holdfast.core.Act
import holdfast.core.Language
import holdfast.core.Role
import holdfast.core.SessionScreen
import holdfast.core.Tap
import holdfast.core.speak
import holdfast.kit.DeviceClock
import java.time.Duration
import kotlin.math.abs
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowSystemClock

@RunWith(RobolectricTestRunner::class)
class ClockTest {
    private lateinit var crew: Crew
    private val manager = app.getSystemService(NotificationManager::class.java)

    @BeforeTest
    fun begin() {
        TestKeystore.begin()
        speak(Language.EN)
        val host = soon { app.phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        crew = Crew(host, Moments("one"))
    }

    @AfterTest
    fun end() {
        crew.close()
        crew.athlete.close()
        app.scope.coroutineContext[kotlinx.coroutines.Job]?.cancel()
    }

    private fun service(intent: Intent?) =
        Robolectric.buildService(ClockService::class.java, intent).create().also {
            it.get().onStartCommand(intent, 0, 1)
        }

    private fun shown(): Notification? =
        manager.activeNotifications.firstOrNull { it.id == ClockNotification.ID }?.notification

    private fun Notification.title() = extras.getCharSequence(Notification.EXTRA_TITLE).toString()

    private fun Notification.text() = extras.getCharSequence(Notification.EXTRA_TEXT)?.toString()

    private fun holds() {
        crew.holds()
        until("the clock is seen") { app.watch.shown.value != null }
    }

    private fun passes(ms: Long) {
        ShadowSystemClock.advanceBy(Duration.ofMillis(ms))
        soon { app.look() }
    }

    @Test
    fun aClockThatBeginsStartsTheService() {
        assertNull(shadowOf(app).nextStartedService)
        holds()
        val started = assertNotNull(shadowOf(app).nextStartedService)
        assertEquals(ClockService::class.java.name, started.component?.className)
    }

    @Test
    fun theServiceStandsInTheForegroundAsHealthAndGoesWithTheClock() {
        holds()
        val service = service(Intent())
        val shadow = shadowOf(service.get() as Service)
        assertEquals(ClockNotification.ID, shadow.lastForegroundNotificationId)
        assertEquals(ServiceInfo.FOREGROUND_SERVICE_TYPE_HEALTH, service.get().foregroundServiceType)
        soon { crew.athlete.tap(Tap.Clock("Calves", Act.STOP, null), null) }
        until("the clock is gone") { app.watch.shown.value == null }
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(ClockService.LAST_WORDS_MS - 1))
        assertFalse(shadow.isStoppedBySelf, "the last words are cut")
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(1))
        until("the service ends") { shadow.isStoppedBySelf }
        assertTrue(shadow.isForegroundStopped)
    }

    @Test
    fun theSystemCountsDownToTheEndOfThePhase() {
        holds()
        passes(6_000)
        until("the hold runs") { app.watch.shown.value?.title?.contains("old") == true }
        val clock = app.watch.shown.value!!
        val shown = ClockNotification(app).of(clock)
        assertTrue(shown.extras.getBoolean(Notification.EXTRA_SHOW_CHRONOMETER))
        assertTrue(shown.extras.getBoolean(Notification.EXTRA_CHRONOMETER_COUNT_DOWN))
        val left = clock.endsAtBootMs!! - SystemClock.elapsedRealtime()
        assertTrue(left in 60_000..125_000, "$left")
        assertTrue(abs(System.currentTimeMillis() + left - shown.`when`) < 1_000)
        assertTrue(shown.flags and Notification.FLAG_ONGOING_EVENT != 0)
    }

    @Test
    fun overTheLockScreenStandsNeitherMovementNorPartOfABody() {
        holds()
        passes(6_000)
        val shown = ClockNotification(app).of(app.watch.shown.value)
        assertEquals(Notification.VISIBILITY_PRIVATE, shown.visibility)
        val inApp = shown.title() + shown.text()
        val public = shown.publicVersion
        val said = public.title() + public.text().orEmpty()
        assertEquals("A clock is running.", said)
        assertTrue(inApp != said, inApp)
        assertTrue(public.extras.getBoolean(Notification.EXTRA_CHRONOMETER_COUNT_DOWN))
    }

    @Test
    fun aClockThatStandsIsText() {
        holds()
        passes(6_000)
        soon { crew.athlete.tap(Tap.Clock("Calves", Act.PAUSE, null), null) }
        until("it stands") { app.watch.shown.value?.isPaused == true }
        val shown = ClockNotification(app).of(app.watch.shown.value)
        assertFalse(shown.extras.getBoolean(Notification.EXTRA_SHOW_CHRONOMETER))
        assertEquals("The clock is paused.", shown.publicVersion.title())
    }

    @Test
    fun aServiceThatTheSystemMadeAnewAsksTheCore() {
        holds()
        // The process was killed: nobody knows of a clock until the core is asked.
        val service = service(null)
        val shadow = shadowOf(service.get() as Service)
        until("it stands") { shadow.lastForegroundNotification != null }
        assertFalse(shadow.isStoppedBySelf)
    }

    @Test
    fun aServiceThatTheSystemMadeAnewWithoutAClockGoes() {
        val service = service(null)
        until("it goes") { shadowOf(service.get() as Service).isStoppedBySelf }
        assertEquals(
            0,
            shadowOf(service.get() as Service).lastForegroundNotificationId,
            "it stood for a moment",
        )
    }

    @Test
    fun whereNoServiceMayRunTheClockIsStillShownAndTheReasonSaid() {
        val refused =
            object : ContextWrapper(app) {
                override fun startForegroundService(intent: Intent) =
                    // What the system throws where an app is in the background.
                    throw ForegroundServiceStartNotAllowedException("not allowed")
            }
        val watch = ClockWatch(refused, app.cues, app::tell)
        watch.see(crew.holds(), Language.EN)
        assertEquals(
            "Cues come only while this screen is open. Keep it open until the clock ends.",
            app.told.value,
        )
        val shown = assertNotNull(shown())
        assertTrue(shown.extras.getBoolean(Notification.EXTRA_CHRONOMETER_COUNT_DOWN))
        watch.see(soon { crew.athlete.tap(Tap.Clock("Calves", Act.STOP, null), null) }, Language.EN)
        assertNull(shown())
    }

    @Test
    fun aServiceThatMayNotStandSaysSoAndGoes() {
        holds()
        val service = Robolectric.buildService(Refused::class.java).create().get()
        service.onStartCommand(Intent(), 0, 1)
        assertTrue(shadowOf(service as Service).isStoppedBySelf)
        assertTrue("only while this screen is open" in app.told.value!!)
        assertNotNull(shown())
    }

    /** As on a phone whose system, or whose maker, lets no service stand. */
    internal class Refused : ClockService() {
        override fun stands(notification: Notification): Unit = throw SecurityException("no")
    }

    @Test
    fun aWallClockThatIsSetWhileAClockRunsChangesNoSecond() {
        fun left(screen: SessionScreen): Long {
            val now = SystemClock.elapsedRealtime()
            return screen.shownClock(now)!!.endsAtBootMs!! - now
        }
        var ahead = 0L
        val moments = Moments("one")
        val wrong = DeviceClock { moments.now().let { it.copy(wallMs = it.wallMs + ahead) } }
        crew.close()
        crew.athlete.close()
        val host = soon { AppPhone(app, wrong, Keystore(app.noBackupFilesDir), app.asking) {}.open()!! }
        soon { host.tap(Tap.Begin(null), null) }
        soon { host.tap(Tap.Clock("Calves", Act.BEGIN, null), null) }
        ShadowSystemClock.advanceBy(Duration.ofMillis(35_000))
        ahead = -3 * 3_600_000L
        val before = left(soon { host.today() })
        ShadowSystemClock.advanceBy(Duration.ofMillis(20_000))
        ahead = 5 * 3_600_000L
        assertEquals(20_000, before - left(soon { host.today() }))
        host.close()
    }

    @Test
    fun aCountdownIsPostedAgainWhenTheWallClockWasSet() {
        holds()
        passes(6_000)
        service(Intent())
        val before = app.watch.shown.value!!
        until("it is posted") { shown() != null }
        val posted = shown()
        app.watch.wallClockWasSet()
        until("it is posted again") { shown() !== posted }
        assertTrue(app.watch.shown.value!!.isSameAs(before))
    }

    @Test
    fun aScreenThatIsReadAgainIsTheSameClock() {
        holds()
        passes(6_000)
        val one = app.watch.shown.value
        passes(1_000)
        assertTrue(one === app.watch.shown.value, "the notification would be posted each second")
    }

    @Test
    fun cuesOfTheCoreAreGivenThroughTheWholeHold() {
        holds()
        val generation = app.cues.generation
        assertTrue(generation > 0)
        // From one cue to the next: the phone's screen is dark, and nobody but the cues themselves asks the
        // core again.
        var seen = app.cues.generation
        repeat(3) {
            val next = soon { crew.athlete.today() }.cues.first { it.dueIn.inWholeMilliseconds > 0 }
            seen = app.cues.generation
            ShadowSystemClock.advanceBy(Duration.ofMillis(next.dueIn.inWholeMilliseconds))
            until("a new list comes") {
                shadowOf(app.cues.looper).idle()
                app.cues.generation > seen
            }
        }
    }
}

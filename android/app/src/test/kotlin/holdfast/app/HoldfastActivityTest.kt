package holdfast.app

import android.Manifest
import android.app.Activity
import android.content.Intent
import android.content.res.Configuration
import android.view.WindowManager
import androidx.compose.runtime.snapshots.Snapshot
import holdfast.core.Act
import holdfast.core.Language
import holdfast.core.Role
import holdfast.core.Row
import holdfast.core.Tap
import holdfast.core.speak
import holdfast.ui.Place
import java.time.Duration
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
import org.robolectric.android.controller.ActivityController
import org.robolectric.shadows.ShadowSystemClock

@RunWith(RobolectricTestRunner::class)
class HoldfastActivityTest {
    private var crew: Crew? = null
    private var controller: ActivityController<HoldfastActivity>? = null

    @BeforeTest
    fun begin() {
        TestKeystore.begin()
        speak(Language.EN)
    }

    @AfterTest
    fun end() {
        controller?.destroy()
        crew?.close()
        app.phone.host.value?.close()
    }

    private fun opened(): HoldfastActivity =
        Robolectric.buildActivity(HoldfastActivity::class.java).also { controller = it }.setup().get()

    private fun started() {
        val host = soon { app.phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        crew = Crew(host, Moments("one"))
    }

    private fun HoldfastActivity.staysOn() =
        window.attributes.flags and WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON != 0

    /** What Compose does between two frames. */
    private fun frames(isSo: () -> Boolean) =
        until("it shows") {
            Snapshot.sendApplyNotifications()
            isSo()
        }

    private fun atTheHold(): HoldfastActivity {
        started()
        val activity = opened()
        until("the day is there") { app.entry.shell?.screen != null }
        val hold = crew!!.holds().rows.first { it is Row.Hold }
        soon { app.entry.shell!!.choose(hold) }
        return activity
    }

    @Test
    fun aNewPhoneBeginsWithTheFirstPage() {
        opened()
        until("the first page is there") { app.entry.first != null }
        assertNull(app.entry.shell)
    }

    @Test
    fun whoStartedSeesTheirDay() {
        started()
        opened()
        until("the day is there") { app.entry.shell?.screen != null }
        assertEquals("Ines", app.entry.shell!!.screen!!.name)
    }

    @Test
    fun theScreenStaysOnAndShowsOverTheLockOnlyAtTheClock() {
        val activity = atTheHold()
        frames { activity.staysOn() }
        assertTrue(shadowOf(activity).showWhenLocked)
        // The clock runs on, and somebody leaves it: what else there is stays behind the lock.
        activity.onBackPressed()
        assertEquals(Place.TODAY, app.entry.shell!!.place)
        frames { !activity.staysOn() }
        assertFalse(shadowOf(activity).showWhenLocked)
        assertNotNull(app.watch.shown.value, "back ended the clock")
        app.entry.shell!!.goOn()
        frames { activity.staysOn() }
        soon { crew!!.athlete.tap(Tap.Clock("Calves", Act.STOP, null), null) }
        frames { !activity.staysOn() }
    }

    /** Whoever picks up a locked phone sees the clock alone; unlocked it is all there again. */
    @Test
    fun aLockedPhoneShowsTheClockAlone() {
        val activity = atTheHold()
        val guard = shadowOf(activity.getSystemService(android.app.KeyguardManager::class.java))
        guard.setKeyguardLocked(true)
        controller!!.pause().resume()
        assertTrue(app.entry.shell!!.locked)
        guard.setKeyguardLocked(false)
        app.sendBroadcast(android.content.Intent(android.content.Intent.ACTION_USER_PRESENT))
        frames { !app.entry.shell!!.locked }
    }

    @Test
    fun aPhoneThatIsTurnedLosesNothing() {
        val first = atTheHold()
        val shell = app.entry.shell
        val turned = Configuration(first.resources.configuration)
        turned.orientation = Configuration.ORIENTATION_LANDSCAPE
        controller!!.configurationChange(turned)
        val second = controller!!.get()
        assertTrue(shell === app.entry.shell)
        assertEquals(Place.SESSION, app.entry.shell!!.place)
        frames { second.staysOn() }
        assertNotNull(app.watch.shown.value)
    }

    @Test
    fun backFromHomeLeavesTheAppAndEndsNothing() {
        started()
        val activity = opened()
        until("the day is there") { app.entry.shell?.screen != null }
        soon { app.entry.shell!!.open(holdfast.core.PageAsk.History(null)) }
        assertNotNull(app.entry.shell!!.pages.shown)
        activity.onBackPressed()
        assertNull(app.entry.shell!!.pages.shown)
        assertFalse(activity.isFinishing)
        activity.onBackPressed()
        assertFalse(activity.isFinishing)
        assertNotNull(app.entry.shell)
    }

    @Test
    fun notificationsAreAskedForAtTheFirstClockAndARefusalIsSaid() {
        started()
        val activity = opened()
        until("the day is there") { app.entry.shell?.screen != null }
        assertNull(shadowOf(activity).lastRequestedPermission)
        crew!!.holds()
        until("the right is asked for") { shadowOf(activity).lastRequestedPermission != null }
        val asked = shadowOf(activity).lastRequestedPermission
        assertEquals(listOf(Manifest.permission.POST_NOTIFICATIONS), asked.requestedPermissions.toList())
        activity.onRequestPermissionsResult(asked.requestCode, asked.requestedPermissions, intArrayOf(-1))
        until("it is said") { app.told.value != null }
        assertTrue("Cues still come" in app.told.value!!, app.told.value)
        assertNotNull(app.watch.shown.value)
    }

    @Test
    fun notificationsAreAskedForOnce() {
        started()
        app.getSharedPreferences("asked", Activity.MODE_PRIVATE)
            .edit()
            .putBoolean("notifications", true)
            .commit()
        val activity = opened()
        until("the day is there") { app.entry.shell?.screen != null }
        crew!!.holds()
        until("the clock is seen") { app.watch.shown.value != null }
        shadowOf(android.os.Looper.getMainLooper()).idle()
        assertNull(shadowOf(activity).lastRequestedPermission)
    }

    @Test
    fun aClockThatIsSetIsDrawnAgain() {
        atTheHold()
        until("the clock is shown") { app.watch.shown.value != null }
        val before = app.watch.shown.value!!
        val screen = app.entry.shell!!.screen
        app.sendBroadcast(Intent(Intent.ACTION_TIME_CHANGED))
        until("it is drawn again") { app.entry.shell!!.screen !== screen && app.watch.shown.value !== before }
        assertTrue(app.watch.shown.value!!.isSameAs(before))
    }

    @Test
    fun whoComesBackSeesWhatIsNow() {
        atTheHold()
        controller!!.pause()
        val before = app.entry.shell!!.screen!!
        ShadowSystemClock.advanceBy(Duration.ofSeconds(20))
        controller!!.resume()
        until("it is read again") { app.entry.shell!!.screen !== before }
    }

    @Test
    fun whatTheBackgroundCouldNotDoIsSaidWhenTheAppOpens() {
        app.unfinished.note("one", "The last exchange with nas did not finish.")
        opened()
        until("it is said") { app.told.value == "The last exchange with nas did not finish." }
    }

    @Test
    fun whoLeavesTheAppHasTheirLogMadeReadyToGo() {
        started()
        opened()
        until("the day is there") { app.entry.shell?.screen != null }
        soon { crew!!.athlete.tap(Tap.Begin(null), null) }
        soon {
            app.phone.keepServer(
                holdfast.ui.Server.WebDav("https://files.example.org/cellar", "ines", "word")
            )
        }
        controller!!.pause().stop()
        val jobs = app.getSystemService(android.app.job.JobScheduler::class.java)
        until("a job waits") { jobs.allPendingJobs.isNotEmpty() }
        assertEquals(Way.INTERNET.jobId, jobs.allPendingJobs.single().id)
    }
}

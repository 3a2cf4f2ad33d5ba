package holdfast.app

import android.app.job.JobInfo
import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.net.NetworkCapabilities
import holdfast.core.Language
import holdfast.core.Role
import holdfast.core.Tap
import holdfast.core.speak
import holdfast.ui.Server
import java.io.IOException
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
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
@Config(shadows = [Resolver::class])
class ExchangeJobTest {
    private val jobs = app.getSystemService(JobScheduler::class.java)

    @BeforeTest
    fun begin() {
        TestKeystore.begin()
        speak(Language.EN)
    }

    @AfterTest
    fun end() {
        app.phone.host.value?.close()
    }

    private fun server(address: String) = StoredCarrier("one", address, address, "ines")

    private fun runs(way: Way): Pair<org.robolectric.shadows.ShadowJobService, ExchangeJob> {
        val job = Robolectric.buildService(ExchangeJob::class.java).create().get()
        val parameters = org.robolectric.util.ReflectionHelpers.newInstance(JobParameters::class.java)
        org.robolectric.util.ReflectionHelpers.setField(parameters, "jobId", way.jobId)
        assertTrue(job.onStartJob(parameters))
        val shadow = shadowOf(job)
        until("the job is done") { shadow.isJobFinished }
        return shadow to job
    }

    @Test
    fun aServerInTheHouseNeedsNoInternet() {
        val wanted = ExchangeJob.job(app, Way.HOUSE).requiredNetwork!!
        assertFalse(wanted.hasCapability(NetworkCapabilities.NET_CAPABILITY_INTERNET))
        assertFalse(wanted.hasCapability(NetworkCapabilities.NET_CAPABILITY_VALIDATED))
        assertTrue(wanted.hasTransport(NetworkCapabilities.TRANSPORT_WIFI))
        val far = ExchangeJob.job(app, Way.INTERNET).requiredNetwork!!
        assertTrue(far.hasCapability(NetworkCapabilities.NET_CAPABILITY_INTERNET))
        assertTrue(far.hasCapability(NetworkCapabilities.NET_CAPABILITY_VALIDATED))
        assertNull(ExchangeJob.job(app, Way.FOLDER).requiredNetwork)
    }

    @Test
    fun everyJobOutlivesABootAndWaitsLongerEachTime() {
        for (way in Way.entries) {
            val job = ExchangeJob.job(app, way)
            assertTrue(job.isPersisted)
            assertEquals(
                30_000L to JobInfo.BACKOFF_POLICY_EXPONENTIAL,
                job.initialBackoffMillis to job.backoffPolicy,
            )
        }
    }

    @Test
    fun whatIsInTheHouseIsKnownByItsAddress() {
        for (near in
            listOf(
                "http://192.168.1.7/dav",
                "https://10.0.0.4:8443/",
                "https://172.20.1.1",
                "http://nas/x",
                "https://nas.local/x",
                "https://[fd00::7]/x",
                "http://127.0.0.1:8080/",
            )) {
            assertEquals(Way.HOUSE, Way.to(server(near)), near)
        }
        for (far in
            listOf(
                "https://files.example.org/cellar",
                "https://172.32.1.1/",
                "https://192.169.1.1/",
                "https://[2001:db8::7]/x",
                "https://10.example.org/",
            )) {
            assertEquals(Way.INTERNET, Way.to(server(far)), far)
        }
        assertEquals(Way.FOLDER, Way.to(StoredCarrier("one", "Crew files", "content://a/b")))
    }

    @Test
    fun aJobThatWaitsIsKept() {
        val carriers = listOf(server("http://nas/x"), server("https://files.example.org/y"))
        ExchangeJob.schedule(app, carriers)
        ExchangeJob.schedule(app, carriers)
        assertEquals(setOf(2, 3), jobs.allPendingJobs.map { it.id }.toSet())
    }

    @Test
    fun whatItCouldNotDoIsSaidTheNextTimeAndNothingIsLost() {
        val host = soon { app.phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        val crew = Crew(host, Moments("one"))
        soon { host.tap(Tap.Begin(null), null) }
        // Nobody listens there.
        soon { app.phone.keepServer(Server.WebDav("http://127.0.0.1:9/dav", "ines", "word")) }
        val before = soon { host.today() }.unpublished
        val (job, _) = runs(Way.HOUSE)
        assertTrue(job.isRescheduleNeeded)
        val said = app.unfinished.take().single()
        assertEquals(
            "The last exchange with http://127.0.0.1:9/dav/ did not finish. No connection to http://127.0.0.1:9/dav/. " +
                "Your log is saved on this device; exchange again when you are online.",
            said,
        )
        assertEquals(emptyList(), app.unfinished.take(), "it is said once")
        assertTrue(soon { host.today() }.unpublished >= before)
        crew.close()
    }

    @Test
    fun aFolderIsExchangedWith() {
        val host = soon { app.phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        val crew = Crew(host, Moments("one"))
        val folder = folder("Crew files")
        val tree = LocalFiles.over(folder)
        val rights =
            android.content.Intent.FLAG_GRANT_READ_URI_PERMISSION or
                android.content.Intent.FLAG_GRANT_WRITE_URI_PERMISSION
        app.contentResolver.takePersistableUriPermission(tree, rights)
        val file = java.io.File(app.filesDir, "carriers.json")
        KeptCarriers(file) {}.add(StoredCarrier("one", "Crew files", tree.toString()))
        app.unfinished.note("one", "it did not work before")
        val (job, _) = runs(Way.FOLDER)
        assertFalse(job.isRescheduleNeeded)
        assertTrue(folder.list()!!.any { it.endsWith(".leaf") })
        assertEquals(emptyList(), app.unfinished.take())
        crew.close()
    }

    @Test
    fun airplaneModeInTheMiddleLosesNothingAndTheNextExchangeGoesOn() {
        val host = soon { app.phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        val crew = Crew(host, Moments("one"))
        soon {
            crew.coach.ask { now ->
                publish(
                    "plan.toml",
                    (Crew.plan() + "\n# more\n").replace("Small block", "Next block").toByteArray(),
                    now,
                )
            }
            crew.coach.exchange(crew.shelf)
            host.tap(Tap.Begin(null), null)
        }
        crew.shelf.beforeGet = { throw IOException("Software caused connection abort") }
        assertNotNull(soonFails<IOException> { host.exchange(crew.shelf) })
        crew.shelf.beforeGet = {}
        assertTrue(soon { host.today() }.unpublished > 0uL, "what was logged waits")
        soon { host.exchange(crew.shelf) }
        assertEquals(0uL, soon { host.today() }.unpublished)
        crew.close()
    }
}

package holdfast.app

import android.os.SystemClock
import android.provider.Settings
import java.io.File
import java.time.Duration
import java.util.TimeZone
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.shadows.ShadowSystemClock

@RunWith(RobolectricTestRunner::class)
class MomentsTest {
    private val kernel = File(folder("kernel"), "boot_id")

    private fun name() = BootName(folder("own"), app.contentResolver, kernel).read()

    private fun boots(count: Int) {
        Settings.Global.putInt(app.contentResolver, Settings.Global.BOOT_COUNT, count)
    }

    @Test
    fun theBootClockIsTheOneThatCountsSleep() {
        val moments = Moments("one")
        val before = moments.now()
        ShadowSystemClock.advanceBy(Duration.ofMinutes(40))
        val now = moments.now()
        assertEquals(40 * 60_000L, now.bootMs - before.bootMs)
        assertEquals(SystemClock.elapsedRealtime(), now.bootMs)
        assertTrue(abs(now.wallMs - System.currentTimeMillis()) < 5_000)
        assertEquals("one", now.bootId)
    }

    @Test
    fun theOffsetIsThatOfTheZoneNow() {
        val zone = TimeZone.getDefault()
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"))
            assertEquals(330, Moments("one").now().offsetMin)
        } finally {
            TimeZone.setDefault(zone)
        }
    }

    @Test
    fun theKernelsNameIsTheBoots() {
        kernel.writeText("0a1b-first\n")
        boots(40)
        assertEquals("0a1b-first", name())
        // Carried to another phone that has booted as often: another boot all the same.
        kernel.writeText("9f8e-other\n")
        assertEquals("9f8e-other", name())
    }

    @Test
    fun theCountOfBootsAloneIsNoName() {
        boots(40)
        val one = name()
        assertFalse(kernel.exists())
        assertTrue(one.endsWith("-40") && one.length > 30, one)
        assertEquals(one, name())
        File(folder("own"), "boot").delete()
        assertNotEquals(one, name())
    }

    @Test
    fun aBootKeepsItsNameWhateverCanBeRead() {
        boots(40)
        val own = name()
        kernel.writeText("0a1b-first\n")
        assertEquals(own, name())
        boots(41)
        assertEquals("0a1b-first", name())
        kernel.delete()
        assertEquals("0a1b-first", name())
        // The system started anew under the same kernel.
        kernel.writeText("0a1b-first\n")
        boots(42)
        assertEquals("0a1b-first", name())
        // A maker forbids the file, and the phone boots.
        kernel.delete()
        boots(43)
        assertNotEquals("0a1b-first", name())
    }

    @Test
    fun whereNothingTellsBootsApartEachStartIsOne() {
        assertNotEquals(name(), name())
    }
}

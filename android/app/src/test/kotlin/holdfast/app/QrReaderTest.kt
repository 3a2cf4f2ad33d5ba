package holdfast.app

import holdfast.core.HoldfastException
import holdfast.core.Language
import holdfast.core.PageAsk
import holdfast.core.PairDid
import holdfast.core.Role
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.words
import java.io.File
import java.util.Random
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class QrReaderTest {
    private val reader = QrReader()
    private lateinit var host: Host

    @BeforeTest
    fun begin() {
        speak(Language.EN)
        host = soon {
            Host.start(File(folder("coach"), "home").path, Crew.start("Maren", Role.COACH, 7), Moments("one"))
        }
    }

    /**
     * A code as a camera sees it: grey, in a larger picture, a little noisy, with rows longer than they are
     * wide.
     */
    private fun picture(side: Int, dark: List<Boolean>, module: Int, stride: Int, height: Int): ByteArray {
        val chance = Random(5)
        val grey = ByteArray(stride * height) { (170 + chance.nextInt(30)).toByte() }
        val from = 60
        for (y in 0 until (side + 8) * module) {
            for (x in 0 until (side + 8) * module) {
                val (row, column) = (y / module - 4) to (x / module - 4)
                val inside = row in 0 until side && column in 0 until side
                val ink = inside && dark[row * side + column]
                grey[(from + y) * stride + from + x] = ((if (ink) 40 else 220) + chance.nextInt(25)).toByte()
            }
        }
        return grey
    }

    @Test
    fun aCodeOfTheCoresIsReadFromTheGreyPlane() {
        val page = soon { host.ask { now -> pairPage(PairDid.Invite(ByteArray(64) { it.toByte() }), now) } }
        val code = page.code!!
        val side = code.side.toInt()
        val (stride, height) = 1_344 to 960
        val grey = picture(side, code.dark, 11, stride, height)
        assertEquals(code.text, reader.read(grey, stride, 1_280, height))
        // A camera's last row ends with its last pixel.
        assertEquals(
            code.text,
            reader.read(grey.copyOf(stride * (height - 1) + 1_280), stride, 1_280, height),
        )
        assertNull(reader.read(grey.copyOf(stride * 40), stride, 1_280, height), "a picture cut short")
    }

    @Test
    fun whereNoCodeIsNothingIsRead() {
        assertNull(reader.read(ByteArray(640 * 480) { (it * 31).toByte() }, 640, 640, 480))
    }

    @Test
    fun aCodeOfSomethingElseIsSaidByTheCore() {
        soon { host.ask { now -> page(PageAsk.Pairing, now) } }
        val error =
            soonFails<HoldfastException> {
                host.ask { now -> pairPage(PairDid.Scan("https://example.org/menu", ByteArray(64)), now) }
            }
        assertTrue(error.words.endsWith(".") && error.words.length > 20, error.words)
    }
}

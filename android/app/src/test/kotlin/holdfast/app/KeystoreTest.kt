package holdfast.app

import holdfast.core.Field
import holdfast.core.HoldfastException
import holdfast.core.Language
import holdfast.core.MassUnit
import holdfast.core.Role
import holdfast.core.Start
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.words
import java.io.File
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class KeystoreTest {
    private val folder = folder("own")
    private val keystore = Keystore(folder)

    @BeforeTest
    fun begin() {
        TestKeystore.begin()
        speak(Language.EN)
    }

    @Test
    fun theKeyIsThereAgainAndLiesWrapped() {
        val key = keystore.begin()
        assertEquals(32, key.size)
        assertContentEquals(key, Keystore(folder).key())
        assertContentEquals(key, keystore.begin())
        val bytes = File(folder, "data-key").readBytes()
        assertFalse(bytes.toList().windowed(8).any { it == key.take(8) }, "the key lies open")
    }

    @Test
    fun theKeyAsksForNobodysFinger() {
        keystore.begin()
        val spec = TestKeystore.specs.single()
        assertTrue(spec.isStrongBoxBacked)
        assertFalse(spec.isUserAuthenticationRequired || spec.isUnlockedDeviceRequired)
        assertEquals(256, spec.keySize)
    }

    @Test
    fun withoutAStrongBoxItIsMadeWithoutOne() {
        TestKeystore.hasStrongBox = false
        assertContentEquals(keystore.begin(), keystore.key())
        assertEquals(listOf(true, false), TestKeystore.specs.map { it.isStrongBoxBacked })
    }

    @Test
    fun aKeystoreThatIsBusyIsAskedAgain() {
        val key = keystore.begin()
        TestKeystore.failures = 2
        assertContentEquals(key, keystore.key())
    }

    @Test
    fun aHomeThatCameWithoutItsKeyIsToldAndStaysAsItIs() {
        val home = File(folder("homes"), "home")
        val start = Start(Role.ATHLETE, "Ines", MassUnit.KG, ByteArray(96) { it.toByte() })
        soon { Host.start(home.path, start, Moments("one"), keystore = keystore.begin()) }.close()
        val files = home.walk().filter { it.isFile }.associate { it.path to it.length() }
        TestKeystore.lose()
        val error =
            soonFails<HoldfastException.Invalid> {
                Host.open(home.path, Moments("one"), keystore = keystore.key())
            }
        assertEquals(Field.KEYSTORE, error.field)
        assertTrue("recovery code" in error.words, error.words)
        assertEquals(files, home.walk().filter { it.isFile }.associate { it.path to it.length() })
        assertTrue(File(folder, "data-key").exists(), "what wraps the key was deleted")
    }

    @Test
    fun whoStartsAnewOnAPhoneThatLostItsKeyGetsAnotherAndTheOldIsKept() {
        val lost = keystore.begin()
        TestKeystore.lose()
        val key = keystore.begin()
        assertFalse(lost.contentEquals(key))
        assertContentEquals(key, keystore.key())
        assertTrue(folder.list()!!.any { "lost" in it })
    }

    @Test
    fun whatWasAlteredOrTornIsNoSecret() {
        keystore.keep("password-1", "only for this app".toByteArray())
        assertEquals("only for this app", String(keystore.open("password-1")!!))
        val file = File(folder, "password-1")
        val bytes = file.readBytes()
        file.writeBytes(bytes.also { it[it.size - 1] = (it.last() + 1).toByte() })
        assertNull(keystore.open("password-1"))
        for (length in listOf(0, 1, 5)) {
            file.writeBytes(bytes.copyOf(length))
            assertNull(keystore.open("password-1"))
        }
        keystore.forget("password-1")
        assertFalse(file.exists())
    }
}

package holdfast.kit

import holdfast.core.Field
import holdfast.core.Holdfast
import holdfast.core.HoldfastException
import holdfast.core.Role
import holdfast.core.Thing
import holdfast.core.checkPlan
import java.io.RandomAccessFile
import java.nio.file.Files
import java.nio.file.Path
import java.time.LocalDate
import kotlin.test.Test
import kotlin.test.assertContains
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertTrue
import org.junit.jupiter.api.io.TempDir

/** Every error arrives as its own type with its fields, and none of them does harm. */
class ErrorsTest {
    @Test
    fun `not found says what and why`(@TempDir homes: Path) {
        val (coach, _) = crew(homes)
        val error =
            assertFailsWith<HoldfastException.NotFound> {
                coach.core.member("Bram", LocalDate.parse("2026-11-03"))
            }
        assertEquals(Thing.MEMBER to "Bram", error.what to error.name)
        assertEquals("No member's log has arrived yet.", error.reason)
        assertEquals("There is no member \"Bram\". No member's log has arrived yet.", error.words)
    }

    @Test
    fun `invalid names the field`(@TempDir homes: Path) {
        val (_, zoe) = crew(homes)
        val name =
            assertFailsWith<HoldfastException.Invalid> {
                Holdfast.start(homes.resolve("x").toString(), start(Role.ATHLETE, " "), zoe.now, null)
            }
        assertEquals(Field.NAME, name.field)
        val date =
            assertFailsWith<HoldfastException.Invalid> { zoe.core.preview(LocalDate.MAX, null, zoe.now) }
        assertEquals(Field.DATE, date.field)
        assertEquals("365241780471 is not a date of the calendar.", date.reason)
    }

    @Test
    fun `a plan's problems come all at once, with their places`() {
        val text =
            Fixtures.plan()
                .decodeToString()
                .replace("movement = \"back-squat\"", "movement = \"back-squad\"")
                .replace("hold = \"2 min\"", "hold = \"2 days\"")
        val error =
            assertFailsWith<HoldfastException.Plan> { checkPlan("wéek 1.toml", text.encodeToByteArray()) }
        assertEquals("wéek 1.toml", error.sourceName)
        assertEquals(2, error.problems.size)
        val lines = text.lines()
        assertTrue("back-squad" in lines[error.problems[0].line.toInt() - 1])
        assertTrue("2 days" in lines[error.problems[1].line.toInt() - 1])
        assertContains(error.words, "wéek 1.toml has 2 problems")
    }

    @Test
    fun `a home that cannot be written says where`(@TempDir homes: Path) {
        // A folder below a file can be made by nobody, not even by root.
        val file = Files.createFile(homes.resolve("a file"))
        val home = file.resolve("home").toString()
        val error =
            assertFailsWith<HoldfastException.Storage> {
                Holdfast.start(home, start(Role.ATHLETE, "Zoë"), evening("2026-11-02"), null)
            }
        assertTrue(error.path.startsWith(home), error.path)
        assertTrue(error.reason.isNotEmpty())
    }

    @Test
    fun `keys open with the keystore they were wrapped with`(@TempDir homes: Path) {
        val home = homes.resolve("Zoë").toString()
        val (key, another) = List(2) { i -> ByteArray(32) { (it + i).toByte() } }
        val now = evening("2026-11-02")
        Holdfast.start(home, start(Role.ATHLETE, "Zoë"), now, key).shut()
        for (wrong in listOf(another, ByteArray(31))) {
            val error = assertFailsWith<HoldfastException.Invalid> { Holdfast.open(home, now, wrong) }
            assertEquals(Field.KEYSTORE, error.field)
        }
        assertEquals("Zoë", Holdfast.open(home, now, key).who().name)
    }

    @Test
    fun `data of a newer version is left untouched`(@TempDir homes: Path) {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        val database = homes.resolve("Zoë/holdfast.db")
        // SQLite keeps the user version at byte 60 of its header (file format, section 1.3).
        RandomAccessFile(database.toFile(), "rw").use {
            it.seek(60)
            it.writeInt(999)
        }
        val before = Files.readAllBytes(database)
        val error =
            assertFailsWith<HoldfastException.TooNew> {
                Holdfast.open(homes.resolve("Zoë").toString(), zoe.now, null)
            }
        assertEquals(999, error.found)
        assertTrue(error.supported in 1..<999)
        assertTrue(before.contentEquals(Files.readAllBytes(database)))
    }

    @Test
    fun `a panic is an error, and the object still works`(@TempDir homes: Path) {
        val (coach, _) = crew(homes)
        val before = coach.core.export()
        val text = Fixtures.plan() + "# (planted panic)\n".encodeToByteArray()
        val error =
            assertFailsWith<HoldfastException.Unexpected> {
                coach.core.publish("small-plan.toml", text, coach.now)
            }
        assertEquals("a panic that a test planted", error.reason)
        assertEquals(before, coach.core.export(), "what broke off left nothing behind")
        val next =
            coach.core.publish(
                "small-plan.toml",
                Fixtures.plan() + "# week 2\n".encodeToByteArray(),
                coach.now,
            )
        assertTrue(next.replaced)
        assertEquals(before.journal.size + 1, coach.core.export().journal.size)
    }

    @Test
    fun `a panic while starting or opening is an error too`(@TempDir homes: Path) {
        val home = homes.resolve("planted").toString()
        val now = evening("2026-11-02")
        val starting =
            assertFailsWith<HoldfastException.Unexpected> {
                Holdfast.start(home, start(Role.ATHLETE, "(planted panic)"), now, null)
            }
        assertEquals("a panic that a test planted", starting.reason)
        // The start was cut short, so opening writes the profile again.
        val opening = assertFailsWith<HoldfastException.Unexpected> { Holdfast.open(home, now, null) }
        assertEquals("a panic that a test planted", opening.reason)
    }

    @Test
    fun `a closed object says so`(@TempDir homes: Path) {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        zoe.core.shut()
        val shut = assertFailsWith<HoldfastException.Invalid> { zoe.today() }
        assertEquals(Field.HOME to "Holdfast is closed. Open it again.", shut.field to shut.reason)
        // UniFFI's own way of letting go, which the host never uses.
        zoe.core.close()
        val gone = assertFailsWith<IllegalStateException> { zoe.today() }
        assertTrue("destroyed" in gone.message!!, gone.message)
    }
}

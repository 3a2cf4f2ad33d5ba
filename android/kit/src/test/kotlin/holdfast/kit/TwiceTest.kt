package holdfast.kit

import holdfast.core.Act
import holdfast.core.KeyKind
import holdfast.core.PieceKindView
import holdfast.core.Row
import holdfast.core.SessionScreen
import holdfast.core.Tap
import java.nio.file.Path
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertNull
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking
import org.junit.jupiter.api.io.TempDir

/** A key that is pressed twice on one screen is done once; nothing here waits or counts for that. */
class TwiceTest {
    /** Runs something on a screen whose key logs the first window. */
    private fun atTheWindow(homes: Path, work: suspend (Player, Host, SessionScreen) -> Unit) = runBlocking {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        Host.open(homes.resolve("Zoë").toString(), { zoe.now }).use { host ->
            host.choose(Row.Window("Corners", 1u))
            host.tap(Tap.Clock("Corners", Act.BEGIN, null), null)
            zoe.pass(30_000)
            val screen = host.today()
            assertEquals(KeyKind.SAVES, screen.here.key.kind)
            work(zoe, host, screen)
        }
    }

    private suspend fun entries(host: Host) = host.ask { export() }.journal.size

    private fun windows(screen: SessionScreen) =
        (screen.pieces[1].kind as PieceKindView.Interval).view.windows.map { it.reps }

    @Test
    fun `a key tapped twice on one screen logs once`(@TempDir homes: Path) =
        atTheWindow(homes) { zoe, host, screen ->
            val before = entries(host)
            val key = screen.here.key.tap!!
            val first = host.tap(key, screen.revision)
            // Long after a finger's bounce: what counts is the screen that it answers.
            zoe.pass(5_000)
            val second = host.tap(key, screen.revision)
            assertFalse(first.ignored)
            assertTrue(second.ignored)
            assertNull(second.saved)
            assertEquals(before + 1, entries(host))
            assertEquals(listOf(15u, null, null, null), windows(host.screen.value!!))
        }

    @Test
    fun `each screen's key is done, and so is what answers none`(@TempDir homes: Path) =
        atTheWindow(homes) { zoe, host, screen ->
            val before = entries(host)
            val first = host.tap(screen.here.key.tap!!, screen.revision)
            assertNotEquals(screen.revision, first.revision)
            zoe.pass(5_000)
            assertFalse(host.tap(window(1u, 14u), first.revision).ignored)
            assertFalse(host.tap(window(1u, 13u), null).ignored)
            assertEquals(before + 3, entries(host))
            assertEquals(13u, windows(host.today())[0])
        }
}

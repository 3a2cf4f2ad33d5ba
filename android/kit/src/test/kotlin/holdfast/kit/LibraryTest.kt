package holdfast.kit

import java.nio.file.Path
import kotlin.test.Test
import kotlin.test.assertContains
import kotlin.test.assertEquals
import kotlinx.coroutines.runBlocking
import org.junit.jupiter.api.io.TempDir

/** Opens a home and says what came of it. */
object Opening {
    @JvmStatic
    fun main(args: Array<String>) = runBlocking {
        try {
            Host.open(args[0], { evening("2026-11-03") }).close()
            println("opened")
        } catch (error: LibraryUnusable) {
            println(error.message)
        }
    }
}

class LibraryTest {
    private fun opening(home: Path, library: String): String {
        crew(home).second.core.shut()
        val own = mapOf("uniffi.component.holdfast.libraryOverride" to library)
        val said = home.resolve("said").toFile()
        val zoe = home.resolve("Zoë").toString()
        child("holdfast.kit.Opening", zoe, said = said, properties = own).ends()
        return said.readText().trim()
    }

    @Test
    fun `a library of another version is refused`(@TempDir home: Path) {
        val folder = System.getProperty("holdfast.otherLibrary")
        val said = opening(home, "$folder/${System.mapLibraryName("holdfast")}")
        assertContains(said, "Holdfast's library is of another version than the app: install the app again.")
    }

    @Test
    fun `a missing library is refused`(@TempDir home: Path) {
        val said = opening(home, "nowhere")
        assertContains(said, "Holdfast's library cannot be loaded: install the app again.")
    }

    @Test
    fun `the library that belongs to the app opens`(@TempDir home: Path) {
        assertEquals("opened", opening(home, "holdfast"))
    }
}

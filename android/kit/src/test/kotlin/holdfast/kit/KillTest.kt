package holdfast.kit

import holdfast.core.Holdfast
import holdfast.core.PieceKindView
import java.nio.file.Path
import kotlin.random.Random
import kotlin.test.Test
import kotlin.test.assertContains
import kotlin.test.assertNull
import kotlin.test.assertTrue
import org.junit.jupiter.api.io.TempDir

/** Logs the first set over and over, and says so after each tap, until it is killed. */
object Logging {
    @JvmStatic
    fun main(args: Array<String>) {
        val core = Holdfast.open(args[0], evening("2026-11-03"), null)
        var reps = args[1].toUInt()
        while (true) {
            reps = (reps + 1u) % 100u
            core.tap(squat(kilograms(50), reps, set = 1u), null, evening("2026-11-03"))
            println(reps)
        }
    }
}

class KillTest {
    @Test
    fun `an app killed between taps goes on where it was`(@TempDir homes: Path) {
        val seed = System.nanoTime()
        println("kills from seed $seed")
        val random = Random(seed)
        val (_, zoe) = crew(homes)
        zoe.tap(squat(kilograms(50), 0u))
        zoe.core.shut()
        val home = homes.resolve("Zoë").toString()
        var reps = 0u
        repeat(4) {
            val said = homes.resolve("said").toFile()
            val child = child("holdfast.kit.Logging", home, reps.toString(), said = said)
            val wanted = random.nextInt(1, 60)
            val limit = System.nanoTime() + 60_000_000_000
            while (
                child.isAlive && System.nanoTime() < limit && said.readText().count { it == '\n' } < wanted
            ) Thread.sleep(1)
            assertTrue(child.isAlive, said.readText())
            // SIGKILL: nothing of it can tidy up.
            child.destroyForcibly().ends()
            // A number without its line's end was not said to the end.
            val acknowledged = said.readText().substringBeforeLast('\n').lines().last().toUInt()
            val core = Holdfast.open(home, zoe.now, null)
            val strength = core.today(zoe.now).pieces[0].kind as PieceKindView.Strength
            reps = strength.view.sets[0].done!!.reps
            // One tap may have been on disk before it could be said.
            assertContains(listOf(acknowledged, (acknowledged + 1u) % 100u), reps)
            assertNull(core.who().opening)
            core.shut()
        }
    }
}

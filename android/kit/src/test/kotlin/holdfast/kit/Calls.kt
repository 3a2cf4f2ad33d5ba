package holdfast.kit

import holdfast.core.MassUnit
import holdfast.core.Role
import holdfast.core.Tap
import java.nio.file.Path
import kotlin.test.Test
import org.junit.jupiter.api.io.TempDir

/** What calls cost here. Not a check, so not named as one: `cargo task measure` runs it. */
class Calls {
    private fun middle(runs: Int, calls: Int, call: () -> Unit): Long {
        // As many runs before warm up.
        val taken =
            List(2 * runs) {
                val start = System.nanoTime()
                repeat(calls) { call() }
                (System.nanoTime() - start) / calls
            }
        return taken.drop(runs).sorted()[runs / 2]
    }

    @Test
    fun measured(@TempDir homes: Path) {
        val carrier = MemoryCarrier()
        val coach = Player.start(homes, Role.COACH, "Märta", MassUnit.KG, 0)
        val zoe = Player.start(homes, Role.ATHLETE, "Zoë", MassUnit.KG, 60)
        coach.core.publish("longer-day.toml", Fixtures.longerDay(), coach.now)
        coach.exchange(carrier)
        pair(coach.core, zoe.core, coach.now, 1)
        zoe.exchange(carrier)
        zoe.goTo("2026-11-03")
        zoe.tap(Tap.Begin(null))
        var taps = 0u
        val set =
            middle(500, 1) {
                val tap = taps++
                val piece = "Squat ${1u + tap % 6u}"
                val logged = Tap.LogSet(piece, 1u + tap / 6u % 8u, kilograms(50), tap % 50u, null)
                zoe.core.tap(logged, null, zoe.now)
            }
        val screen = middle(500, 1) { zoe.core.today(zoe.now) }
        zoe.core.shut()
        val empty = middle(500, 1_000) { zoe.core.shut() }
        println("calls: empty $empty ns, set $set ns, screen $screen ns")
    }
}

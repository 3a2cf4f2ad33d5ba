package holdfast.ui

import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.unit.Density
import com.sun.management.ThreadMXBean
import holdfast.core.Row
import holdfast.core.Tap
import holdfast.kit.Host
import java.lang.management.ManagementFactory
import kotlinx.coroutines.runBlocking
import org.junit.Test

/**
 * What a touch costs from the finger to the drawn screen, beside what the core alone takes for it; what a
 * clock's frame costs. Drawn by the processor, on the screen of a phone. Not a check, so not named as one:
 * `cargo task measure` runs it.
 */
class Frames {
    private var clock = 0L

    private fun scene(shell: Shell) =
        ImageComposeScene(1080, 2340, Density(2.75f)) { HoldfastApp(shell, false, roboto, moves = false) }

    /** Two frames later everything is where it belongs. */
    private fun ImageComposeScene.drawn() {
        clock += 16_000_000
        render(clock)
        clock += 16_000_000
        render(clock)
    }

    private fun middle(runs: Int, act: (Int) -> Unit): Long {
        // As many before warm up.
        val taken =
            List(2 * runs) {
                val start = System.nanoTime()
                act(it)
                System.nanoTime() - start
            }
        return taken.drop(runs).sorted()[runs / 2]
    }

    private fun allocated(): Long {
        val threads = ManagementFactory.getThreadMXBean() as ThreadMXBean
        return threads.getThreadAllocatedBytes(Thread.currentThread().id)
    }

    @Test
    fun measured() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            stage.trained()
            val shell = stage.shell
            shell.press()
            val scene = scene(shell)
            scene.drawn()
            val log = { Tap.LogSet("Squat", 1u, holdfast.core.Mass(50 * 100_000_000_000), 8u, null) }
            val core = middle(100) { runBlocking { stage.ines.ask { now -> tap(log(), null, now) } } }
            stage.hands.pass(5_000)
            shell.choose(Row.Set("Squat", 1u))
            scene.drawn()
            val touch =
                middle(60) {
                    stage.hands.pass(5_000)
                    runBlocking {
                        shell.choose(Row.Set("Squat", 2u))
                        shell.press()
                    }
                    scene.drawn()
                }
            // A rest's clock, second by second.
            runBlocking { shell.choose(Row.Set("Squat", 2u)) }
            scene.drawn()
            val look = middle(100) { runBlocking { stage.ines.today() } }
            val frame =
                middle(60) {
                    stage.hands.pass(1_000)
                    runBlocking { shell.look() }
                    scene.drawn()
                }
            val still = middle(60) { scene.drawn() }
            val before = allocated()
            repeat(20) {
                stage.hands.pass(1_000)
                runBlocking { shell.look() }
                scene.drawn()
            }
            val bytes = (allocated() - before) / 20
            scene.close()
            println(
                "frames: set ${core / 1000} us in the core, ${touch / 1000} us to the drawn screen; " +
                    "clock ${look / 1000} us in the core, ${frame / 1000} us to the drawn screen " +
                    "(${still / 1000} us where nothing moved), ${bytes / 1024} KiB allocated a second shown"
            )
        }
    }

    /** Ten years of three evenings a week, then the app is opened. */
    @Test
    fun first_screen() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val opened = { years: String ->
                val middle =
                    middle(10) {
                        val host = runBlocking { Host.open(stage.again(), stage.hands) }
                        val shell = Shell(host, stage.phone)
                        runBlocking { shell.start() }
                        val scene = scene(shell)
                        scene.drawn()
                        scene.close()
                        host.close()
                    }
                println("frames: first screen with $years ${middle / 1000} us")
            }
            stage.ines.close()
            opened("an empty log")
            val host = Host.open(stage.again(), stage.hands)
            repeat(1_560) {
                host.tap(Tap.Begin("Any evening"), null)
                for (set in 1u..3u) {
                    host.tap(
                        Tap.LogSet("Squat", set, holdfast.core.Mass(50 * 100_000_000_000), 8u, null),
                        null,
                    )
                    stage.hands.pass(180_000)
                }
                host.tap(Tap.Finish(7u, 60u), null)
                stage.hands.pass(Stage.week / 3)
            }
            host.close()
            opened("1,560 sessions")
        }
    }
}

package holdfast.ui

import holdfast.core.Act
import holdfast.core.Ask
import holdfast.core.Language
import holdfast.core.Row
import holdfast.core.Tap
import kotlinx.coroutines.runBlocking
import org.junit.Test

/** Each screen once, drawn into the build folder: to be looked at. */
class PicturesTest {
    private fun Stage.pictures(name: String, look: Look = Look()) = everywhere(shell, name, look)

    @Test
    fun a_session_from_begin_to_end() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val shell = stage.shell
            stage.pictures("today-first-time")
            shell.press()
            stage.hands.pass(60_000)
            shell.look()
            stage.pictures("first-set")
            stage.logs(listOf(50, 55, 60))
            stage.hands.pass(Stage.week - 60 * 60 * 1000)
            shell.start()
            stage.pictures("today")
            stage.pictures("today-dark", Look(dark = true))
            shell.press()
            stage.pictures("set")
            stage.pictures("set-dark", Look(dark = true))
            stage.pictures("set-large-text", Look(text = 2f))
            stage.pictures("set-narrow", Look(wide = 320, high = 640))
            stage.pictures("set-lying", Look(wide = 844, high = 390))
            stage.hands.pass(90_000)
            shell.press()
            stage.hands.pass(36_000)
            shell.look()
            stage.pictures("rest")
            stage.pictures("rest-dark", Look(dark = true))
            stage.pictures("rest-large-text", Look(text = 2f))
            spoken(Language.DE) {
                runBlocking { shell.start() }
                stage.pictures("rest-german")
            }
            shell.start()
            shell.ask(Ask.Row(Row.Set("Squat", 2u), whole = true))
            stage.pictures("other-load")
            shell.back()
            shell.ask(Ask.Hurts(shell.screen!!.here.row))
            stage.pictures("hurts")
            shell.back()
            shell.ask(Ask.Option("Squat"))
            stage.pictures("options")
            shell.back()
            stage.hands.pass(120_000)
            shell.look()
            shell.press()
            stage.hands.pass(180_000)
            shell.look()
            stage.pictures("open-set")
        }
    }

    @Test
    fun clocks() = runBlocking {
        Stage(Stage.plan("every-kind.toml")).use { stage ->
            val shell = stage.shell
            shell.press()
            val windows = shell.screen!!.rows.first { it is Row.Window }
            shell.choose(windows)
            stage.pictures("window-before")
            stage.hands.pass(5_000)
            shell.press()
            stage.hands.pass(30_000)
            shell.look()
            stage.pictures("window")
            stage.ines.tap(Tap.Clock((windows as Row.Window).piece, Act.STOP, null), null)
            shell.choose(Row.Finish)
            stage.pictures("finish")
            stage.pictures("finish-large-text", Look(text = 2f))
            shell.ask(Ask.Extra)
            stage.pictures("extra")
            val typed = shell.asked!!.screen.fields.last() as holdfast.core.QuestionField.Words
            shell.ask(Ask.Extra, typed.then.copy(words = "Face pull", reps = 12u))
            stage.pictures("extra-chosen")
            shell.back()
            shell.showMore()
            stage.pictures("more-keys")
        }
    }

    @Test
    fun holds() = runBlocking {
        val small = Stage.plan("small-plan.toml")
        val pushes =
            "hold = \"2 min\"\n  technique = \"contract-relax\"\n  contract = \"6 s\"\n  relax = \"24 s\""
        for ((kind, plan) in listOf("still" to small, "push" to small.replace("hold = \"2 min\"", pushes))) {
            Stage(plan).use { stage ->
                val shell = stage.shell
                shell.press()
                val hold = shell.screen!!.rows.filterIsInstance<Row.Hold>().firstOrNull() ?: return@use
                shell.choose(hold)
                stage.hands.pass(5_000)
                val name = "hold-$kind"
                stage.pictures("$name-before")
                shell.press()
                for ((at, seconds) in listOf(2L, 7L, 30L, 70L, 20L).withIndex()) {
                    stage.hands.pass(seconds * 1000)
                    shell.look()
                    stage.pictures("$name-$at")
                    if (at == 1) stage.pictures("$name-floor", Look(wide = 844, high = 390))
                    if (at == 1) stage.pictures("$name-dark", Look(dark = true))
                }
                val measure = shell.screen!!.rows.filterIsInstance<Row.Measure>().firstOrNull()
                if (measure != null) {
                    shell.choose(measure)
                    stage.pictures("$name-measure")
                }
            }
        }
    }
}

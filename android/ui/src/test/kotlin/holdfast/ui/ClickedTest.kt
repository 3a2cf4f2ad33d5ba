package holdfast.ui

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.text.AnnotatedString
import holdfast.core.Ask
import holdfast.core.Language
import holdfast.core.QuestionField
import holdfast.ui.screens.besides
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking
import org.junit.Rule
import org.junit.Test

/**
 * A session by what a person sees and taps, on the real core; each save is on disk before the next screen is
 * asked for.
 */
class ClickedTest {
    @get:Rule val rule = createComposeRule()

    private val hand = Hand(rule)

    private fun tap(text: String) = hand.tap(text)

    private fun sees(text: String) = hand.sees(text)

    @Test
    fun a_first_set_is_chosen_saved_and_undone() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            sees("Any evening")
            tap("Begin Any evening")
            sees("set 1 of 3")
            stage.hands.pass(5_000)
            tap("Choose the load")
            sees("What did you lift?")
            // The lightest load is the empty bar; from there in steps of the room.
            runBlocking {
                var asked = stage.shell.asked!!
                repeat(3) {
                    val stepper = asked.screen.fields.first() as holdfast.core.QuestionField.Stepper
                    stage.shell.ask(asked.ask, stepper.more!!.then)
                    asked = stage.shell.asked!!
                }
            }
            sees("Choose the reps left")
            tap("2")
            sees("Save ")
            stage.hands.pass(5_000)
            tap("Save ")
            sees("Squat set 1")
            val saved = runBlocking { stage.ines.today() }
            assertEquals(1, saved.pieces.first().progress?.first()?.digitToInt())
            stage.hands.pass(5_000)
            tap("Undo")
            sees("set 1 of 3")
        }
    }

    /** Whoever is killed in a session comes back to it, in either language. */
    @Test
    fun a_killed_app_opens_where_the_session_stands() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking { stage.holds() }
            stage.hands.pass(20_000)
            spoken(Language.DE) {
                // Another shell over the same home, as after a killed process.
                val again = Shell(stage.ines, stage.phone)
                runBlocking { again.start() }
                rule.setContent { Held { HoldfastApp(again, dark = true, font = roboto, moves = false) } }
                sees(again.screen!!.here.key.words)
                assertEquals(Place.SESSION, again.place)
                rule
                    .onNodeWithText(again.screen!!.here.clock!!.digits!!, substring = true)
                    .assertIsDisplayed()
            }
        }
    }

    /**
     * Whoever picks up a locked phone reads the clock, and nothing of what is trained; no touch does
     * anything.
     */
    @Test
    fun a_locked_phone_shows_the_clock_alone() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking { stage.holds() }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            sees("Calves")
            stage.shell.locked = true
            rule.waitForIdle()
            sees(stage.shell.screen!!.here.clock!!.digits!!)
            assertTrue(rule.onAllNodesWithText("Cal", substring = true).fetchSemanticsNodes().isEmpty())
            assertTrue(rule.onAllNodes(hasClickAction()).fetchSemanticsNodes().isEmpty())
        }
    }

    /** A screen reader hears which phase it is, and every touch says what it does. */
    @Test
    fun phases_are_announced_and_every_touch_has_words() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking { stage.holds() }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            val said = SemanticsMatcher.keyIsDefined(SemanticsProperties.LiveRegion)
            val heard = rule.onAllNodes(said).fetchSemanticsNodes()
            val words = heard.flatMap { it.config.getOrNull(SemanticsProperties.Text).orEmpty() + below(it) }
            assertTrue(words.any { it.text == "Get ready" }, "$words")
            for (touch in rule.onAllNodes(hasClickAction()).fetchSemanticsNodes()) {
                val text = touch.config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text }
                val described = touch.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()
                assertTrue(
                    (text + described).any { it.isNotBlank() },
                    "a touch without words at ${touch.boundsInRoot}",
                )
            }
        }
    }

    /** No key is drawn that does nothing: each has a tap, or asks something. */
    @Test
    fun every_key_leads_somewhere() = runBlocking {
        for (plan in listOf("small-plan.toml", "every-kind.toml")) {
            Stage(Stage.plan(plan)).use { stage ->
                val shell = stage.shell
                shell.press()
                for (row in shell.screen!!.rows) {
                    stage.hands.pass(5_000)
                    shell.choose(row)
                    for (key in besides(shell.screen!!.here.sideKeys, row).filter { it.tap == null }) {
                        shell.press(key)
                        assertTrue(shell.asked != null, "$plan, $row: ${key.words}")
                        shell.back()
                    }
                    val key = shell.screen!!.here.key
                    if (key.tap != null || shell.inline != null || key.asks == null) continue
                    shell.press()
                    assertTrue(shell.asked != null, "$plan, $row: ${key.words}")
                    shell.back()
                }
            }
        }
    }

    /**
     * An answer that comes so soon after another touch that it is not taken stays on screen, and is taken the
     * next time.
     */
    @Test
    fun an_answer_that_is_not_taken_stays() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val shell = stage.shell
            shell.press()
            shell.ask(Ask.Note(null))
            val note = shell.asked!!.screen.fields.filterIsInstance<QuestionField.Words>().single()
            shell.ask(Ask.Note(null), note.then.copy(words = "grip slipped", private = false))
            shell.answer()
            assertTrue(shell.asked != null && shell.screen!!.notes.isEmpty())
            stage.hands.pass(5_000)
            shell.answer()
            assertEquals(null, shell.asked)
            assertTrue(shell.screen!!.notes.single().text.contains("grip slipped"))
        }
    }

    /** A clock is read again when its digits change: at the next whole second. */
    @Test
    fun a_clock_is_read_at_each_whole_second() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            assertEquals(null, untilNext(stage.shell.screen!!))
            stage.holds()
            stage.hands.pass(1_300)
            stage.shell.look()
            assertEquals(700, untilNext(stage.shell.screen!!))
            stage.hands.pass(700)
            stage.shell.look()
            assertEquals(1_000, untilNext(stage.shell.screen!!))
        }
    }

    private fun below(node: SemanticsNode): List<AnnotatedString> =
        node.children.flatMap { it.config.getOrNull(SemanticsProperties.Text).orEmpty() + below(it) }
}

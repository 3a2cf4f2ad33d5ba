package holdfast.ui

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertHeightIsAtLeast
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.test.performClick
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.unit.dp
import holdfast.core.Language
import holdfast.core.Row
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

    private fun tap(text: String) {
        val node = rule.onAllNodes(hasText(text, substring = true) and hasClickAction()).onFirst()
        node.assertHeightIsAtLeast(48.dp)
        node.performClick()
        rule.waitForIdle()
    }

    /** Waits until the core has answered a touch. */
    private fun sees(text: String) {
        rule.waitUntil(5_000) {
            rule.onAllNodesWithText(text, substring = true).fetchSemanticsNodes().isNotEmpty()
        }
        rule.onAllNodesWithText(text, substring = true).onFirst().assertIsDisplayed()
    }

    @Test
    fun a_first_set_is_chosen_saved_and_undone() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            rule.setContent { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) }
            sees("Any evening")
            tap("Begin Any evening")
            sees("set 1 of 3")
            stage.hands.pass(5_000)
            tap("Choose the load")
            sees("What did you lift?")
            // The lightest load is the empty bar; from there in steps of the room.
            rule.onAllNodes(hasClickAction()).fetchSemanticsNodes().also { assert(it.size > 6) }
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
            runBlocking {
                stage.shell.press()
                stage.shell.choose(stage.shell.screen!!.rows.first { it is Row.Hold })
                stage.hands.pass(5_000)
                stage.shell.press()
                stage.hands.pass(20_000)
            }
            spoken(Language.DE) {
                // Another shell over the same home, as after a killed process.
                val again = Shell(stage.ines)
                runBlocking { again.start() }
                rule.setContent { HoldfastApp(again, dark = true, font = roboto, moves = false) }
                sees(again.screen!!.here.key.words)
                assertEquals(Place.SESSION, again.place)
                rule
                    .onNodeWithText(again.screen!!.here.clock!!.digits!!, substring = true)
                    .assertIsDisplayed()
            }
        }
    }

    /** A screen reader hears which phase it is, and every touch says what it does. */
    @Test
    fun phases_are_announced_and_every_touch_has_words() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking {
                stage.shell.press()
                stage.shell.choose(stage.shell.screen!!.rows.first { it is Row.Hold })
                stage.hands.pass(5_000)
                stage.shell.press()
            }
            rule.setContent { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) }
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

    private fun below(node: SemanticsNode): List<AnnotatedString> =
        node.children.flatMap { it.config.getOrNull(SemanticsProperties.Text).orEmpty() + below(it) }
}

package holdfast.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onNodeWithText
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import holdfast.core.Ask
import holdfast.core.Language
import holdfast.core.PieceKindView
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

    /** With text of twice the size nothing that is needed between two sets is off the screen. */
    @Test
    fun large_text_keeps_load_hurts_undo_and_the_key() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking {
                stage.trained()
                stage.shell.press()
            }
            rule.setContent {
                val phone = Density(LocalDensity.current.density, fontScale = 2f)
                CompositionLocalProvider(LocalDensity provides phone) {
                    Box(Modifier.size(390.dp, 844.dp)) {
                        HoldfastApp(stage.shell, dark = false, font = roboto, moves = false)
                    }
                }
            }
            fun sets() = (stage.shell.screen!!.pieces.first().kind as PieceKindView.Strength).view.sets
            whole(listOf(sets()[0].load!!.number, "It hurts", "Undo", "Done: "))
            stage.hands.pass(90_000)
            tap("Done: ")
            sees("End the rest")
            val next = sets()[1].load!!
            val change = listOfNotNull(next.change!!.offText, next.change!!.onText)
            val digits = stage.shell.screen!!.here.clock!!.digits!!
            whole(change + listOf(digits, sets()[1].askedText, "It hurts", "Undo", "End the rest"))
        }
    }

    /** On the smallest phone too, in the longer language: what the body does next is all there. */
    @Test
    fun a_small_phone_with_large_german_letters_keeps_change_clock_and_seconds() {
        spoken(Language.DE) {
            Stage(Stage.plan("small-plan.toml")).use { stage ->
                runBlocking {
                    stage.trained()
                    stage.shell.press()
                    stage.hands.pass(90_000)
                    stage.shell.press()
                }
                rule.setContent {
                    val phone = Density(LocalDensity.current.density, fontScale = 2f)
                    CompositionLocalProvider(LocalDensity provides phone) {
                        Box(Modifier.size(320.dp, 640.dp)) {
                            HoldfastApp(stage.shell, dark = false, font = roboto, moves = false)
                        }
                    }
                }
                fun screen() = stage.shell.screen!!
                fun sets() = (screen().pieces.first().kind as PieceKindView.Strength).view.sets
                val next = sets()[1].load!!
                val change = listOfNotNull(next.change!!.offText, next.change!!.onText)
                whole(
                    change + listOf(screen().here.clock!!.digits!!, "Es tut", "Rückgängig", "Pause beenden")
                )
                runBlocking {
                    stage.shell.choose(screen().rows.first { it is holdfast.core.Row.Hold })
                    stage.hands.pass(5_000)
                    stage.shell.press()
                    stage.hands.pass(30_000)
                    stage.shell.look()
                }
                rule.waitForIdle()
                val clock = screen().here.clock!!
                whole(listOf(clock.now, clock.digits!!, clock.about!!.replaceFirstChar { it.uppercase() }))
            }
        }
    }

    /** Each text is on screen, and none of it is cut off or broken within a number. */
    private fun whole(texts: List<String>) {
        for (text in texts) {
            val node = rule.onAllNodes(says(text), useUnmergedTree = true).onFirst()
            assertTrue(runCatching { node.assertIsDisplayed() }.isSuccess, "$text is not displayed")
            val shown = node.fetchSemanticsNode()
            val (bounds, size) = shown.boundsInRoot to shown.size
            // What is cut off has smaller bounds than size.
            assertTrue(
                bounds.height >= size.height - 1 && bounds.width >= size.width - 1,
                "$text: $bounds of $size",
            )
            val layouts = mutableListOf<TextLayoutResult>()
            shown.config.getOrNull(SemanticsActions.GetTextLayoutResult)?.action?.invoke(layouts)
            val lines = layouts.single().lineCount
            assertTrue(' ' in text || lines == 1, "$text has $lines lines")
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

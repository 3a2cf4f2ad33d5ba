package holdfast.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.test.junit4.createComposeRule
import holdfast.core.KeyKind
import holdfast.core.Language
import holdfast.core.QuestionField
import holdfast.core.QuestionScreen
import holdfast.core.Row
import holdfast.core.SessionState
import holdfast.kit.Host
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking
import org.junit.Rule
import org.junit.Test

/**
 * A whole session from its begin to its rating, by what a person sees and touches: loads typed, reps and
 * readings chosen, clocks started and waited for, killed and opened again on the way.
 */
class WholeSessionTest {
    @get:Rule val rule = createComposeRule()

    private val hand = Hand(rule)
    private var shell by mutableStateOf<Shell?>(null)

    @Test fun a_whole_session_in_english() = whole(Language.EN, "3 of 3 sets", "5 of 10")

    @Test fun a_whole_session_in_german() = whole(Language.DE, "3 von 3 Sätzen", "5 von 10")

    private fun whole(language: Language, sets: String, rated: String) {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            spoken(language) {
                var host: Host = stage.ines
                runBlocking {
                    host.ask { now -> chooseLanguage(language, now) }
                    shell = Shell(host, stage.phone).also { it.start() }
                }
                rule.setContent { Held { HoldfastApp(shell!!, dark = false, font = roboto, moves = false) } }
                var killed = 0
                var steps = 0
                while (shell!!.screen!!.state != SessionState.FINISHED) {
                    assertTrue(steps++ < 120, "it does not end: ${shell!!.screen!!.here}")
                    val stood = state()
                    step(stage)
                    answered(stood)
                    rule.waitForIdle()
                    val at = shell!!.screen!!
                    // Between two sets, in a window, and while a stretch is held.
                    val kills =
                        when (killed) {
                            0 -> at.here.row == Row.Set("Squat", 2u)
                            1 -> at.here.row is Row.Window && at.here.clock?.runs == true
                            2 -> at.here.row is Row.Hold && at.here.clock?.runs == true
                            else -> false
                        }
                    if (!kills) continue
                    killed++
                    val before = runBlocking { host.ask { export() }.toString() }
                    host.close()
                    runBlocking {
                        host = Host.open(stage.again(), stage.hands)
                        shell = Shell(host, stage.phone).also { it.start() }
                        assertEquals(before, host.ask { export() }.toString(), "what was saved is there")
                    }
                    rule.waitForIdle()
                    assertEquals(Place.SESSION, shell!!.place)
                    assertEquals(at.here.row, shell!!.screen!!.here.row)
                    hand.sees(shell!!.inline?.screen?.key?.words ?: shell!!.screen!!.here.key.words)
                }
                assertEquals(3, killed)
                hand.sees(sets)
                hand.sees(rated)
                val done = shell!!.screen!!.cameTo
                assertTrue(done.filter { it.row != null }.all { it.all }, "$done")
                host.close()
            }
        }
    }

    /** What stands on screen: a touch is answered once it is something else. */
    private fun state() = shell!!.run { listOf(screen, asked, inline, place, trouble) }

    private fun answered(stood: List<Any?>) {
        val waited = runCatching { rule.waitUntil(5_000) { state() != stood } }
        check(waited.isSuccess) { "nothing comes of it: ${state()}; ${hand.all()}" }
    }

    /** What a person does next: answers what is asked, waits for a clock, touches the key. */
    private fun step(stage: Stage) {
        val at = shell!!
        val here = at.screen!!.here
        val asked = at.asked?.screen ?: at.inline?.screen
        val clock = here.clock
        stage.hands.pass(5_000)
        when {
            asked != null && asked.key.tap == null -> answer(asked)
            asked != null -> hand.tap(asked.key.words)
            clock != null && clock.runs && (here.row is Row.Hold || here.key.kind == KeyKind.WAITS) -> {
                stage.hands.pass(10_000)
                runBlocking { at.look() }
                rule.waitForIdle()
            }
            else -> hand.tap(here.key.words)
        }
    }

    /** Touches or types what is not answered yet, the first of it. */
    private fun answer(asked: QuestionScreen) {
        for (field in asked.fields) {
            when (field) {
                is QuestionField.Stepper -> {
                    if (field.value != null) continue
                    val types = field.typed
                    if (types != null && field.unit != null) {
                        hand.tap(types.words)
                        hand.types(field.label, "40")
                    } else hand.tapSign("${field.label}: ${field.more!!.words}")
                    return
                }
                is QuestionField.Choices -> {
                    if (field.choices.any { it.chosen }) continue
                    return hand.tapJust(field.choices[field.choices.size / 2].words)
                }
                is QuestionField.Words -> {}
            }
        }
        error("nothing is left to answer: $asked")
    }
}

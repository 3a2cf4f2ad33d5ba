package holdfast.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import holdfast.core.Ask
import holdfast.core.Language
import holdfast.core.PageAsk
import holdfast.core.PieceKindView
import holdfast.core.Row
import holdfast.core.SideKeyKind
import holdfast.ui.parts.capital
import kotlin.test.assertEquals
import kotlinx.coroutines.runBlocking
import org.junit.Rule
import org.junit.Test

/**
 * Text of twice the size, on a small phone and the usual one, in both languages: no word breaks in the
 * middle, and what the body does next is in view.
 */
class LargeTextTest {
    @get:Rule val rule = createComposeRule()

    private var size by mutableStateOf(DpSize(320.dp, 640.dp))
    private var shell by mutableStateOf<Shell?>(null)
    private var turn by mutableStateOf(0)
    private val wrong = mutableListOf<String>()

    @Test
    fun no_word_breaks_and_what_comes_next_is_in_view() {
        rule.setContent {
            val phone = Density(LocalDensity.current.density, fontScale = 2f)
            CompositionLocalProvider(LocalDensity provides phone) {
                key(size, turn) {
                    Box(Modifier.size(size)) {
                        shell?.let { HoldfastApp(it, dark = false, font = roboto, moves = false) }
                    }
                }
            }
        }
        for (language in Language.entries) spoken(language) { session(language) }
        assertEquals(emptyList(), wrong)
    }

    private fun session(language: Language) {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking {
                stage.ines.ask { now -> chooseLanguage(language, now) }
                stage.shell.start()
                stage.trained()
            }
            val at = stage.shell
            fun does(act: suspend () -> Unit) = runBlocking { act() }
            fun screen() = at.screen!!
            fun sets() = (screen().pieces.first().kind as PieceKindView.Strength).view.sets
            fun digits() = screen().here.clock!!.digits!!
            look(at, "today")
            Hand(rule).sees(sets()[0].load!!.build!!.short!!)
            does { at.press() }
            /** It hurts, Undo and the one key never give way. */
            fun keys(): List<String> {
                val always = setOf(SideKeyKind.HURTS, SideKeyKind.UNDO)
                val beside = screen().here.sideKeys.filter { it.kind in always }.map { it.words.capital() }
                return beside + (at.inline?.screen?.key ?: screen().here.key).words
            }
            fun needs(name: String, texts: List<String>) = look(at, name, texts + keys())
            needs("set", listOf(sets()[0].load!!.number))
            stage.hands.pass(90_000)
            does { at.press() }
            val change = sets()[1].load!!.change!!
            needs("rest", listOfNotNull(change.offText, change.onText, digits()))
            does { at.ask(Ask.Row(Row.Set("Squat", 2u), whole = true)) }
            look(at, "other load")
            does { at.back().also { at.ask(Ask.Hurts(screen().here.row)) } }
            look(at, "hurts")
            does { at.back().also { at.ask(Ask.Option("Squat")) } }
            look(at, "options")
            at.back()
            // Once the rest is over.
            stage.hands.pass(180_000)
            does { at.choose(Row.Set("Squat", 3u)) }
            // The keys for reps can be scrolled to; the first are in view.
            needs("open set", listOf(sets()[2].load!!.number, "1", "2"))
            does { at.choose(screen().rows.first { it is Row.Window }) }
            stage.hands.pass(5_000)
            does { at.press() }
            stage.hands.pass(15_000)
            does { at.look() }
            needs("window", listOf(digits()))
            stage.hands.pass(5_000)
            does { at.press() }
            does { at.choose(screen().rows.first { it is Row.Hold }) }
            stage.hands.pass(5_000)
            does { at.press() }
            stage.hands.pass(30_000)
            does { at.look() }
            val clock = screen().here.clock!!
            look(at, "hold", listOf(clock.now, digits(), clock.about!!.replaceFirstChar { it.uppercase() }))
            does { at.choose(Row.Finish) }
            needs("finish", listOf("0", "1", "2"))
            does { at.open(PageAsk.History(null)) }
            look(at, "history")
            does { at.open(PageAsk.Movement(null, "Back squat")) }
            look(at, "movement")
            does { at.open(PageAsk.Exchange(emptyList())) }
            look(at, "exchange")
            does { at.open(PageAsk.ThisPhone(at.pages.choices)) }
            look(at, "this phone")
        }
    }

    /** Looks at what a shell shows, on both phones. */
    private fun look(at: Shell, name: String, needed: List<String> = emptyList()) {
        for (now in listOf(DpSize(320.dp, 640.dp), DpSize(390.dp, 844.dp))) {
            runBlocking { at.again() }
            size = now
            shell = at
            turn++
            rule.waitForIdle()
            val where = "$name, ${now.width}, ${at.phoneWords.today}"
            needed.filterNot(::inView).forEach {
                wrong += "$where: $it is not in view: ${texts().map { it.layoutInput.text.text }}"
            }
            for (laid in texts()) {
                val text = laid.layoutInput.text.text
                for (line in 0 until laid.lineCount - 1) {
                    val end = laid.getLineEnd(line)
                    val torn =
                        end in 1 until text.length &&
                            text[end - 1].isLetterOrDigit() &&
                            text[end].isLetterOrDigit()
                    if (torn) wrong += "$where: ${text.take(end)}|${text.drop(end)}"
                }
            }
        }
    }

    private fun texts(): List<TextLayoutResult> {
        val laid = SemanticsMatcher.keyIsDefined(SemanticsActions.GetTextLayoutResult)
        return rule.onAllNodes(laid, useUnmergedTree = true).fetchSemanticsNodes().flatMap { node ->
            val results = mutableListOf<TextLayoutResult>()
            node.config.getOrNull(SemanticsActions.GetTextLayoutResult)?.action?.invoke(results)
            results
        }
    }

    private fun bounds(text: String) =
        rule.onAllNodes(says(text), useUnmergedTree = true).fetchSemanticsNodes().map {
            it.boundsInRoot to it.size
        }

    /** True where a text that says just that, or holds it, is drawn as high and wide as it is. */
    private fun inView(text: String): Boolean {
        val exact = rule.onAllNodes(says(text, all = true), useUnmergedTree = true)
        val nodes =
            if (exact.fetchSemanticsNodes().isEmpty()) rule.onAllNodes(says(text), useUnmergedTree = true)
            else exact
        return nodes.fetchSemanticsNodes().indices.any { index ->
            val node = nodes[index]
            val shown = node.fetchSemanticsNode()
            val (bounds, size) = shown.boundsInRoot to shown.size
            runCatching { node.assertIsDisplayed() }.isSuccess &&
                bounds.height >= size.height - 1 &&
                bounds.width >= size.width - 1
        }
    }
}

package holdfast.ui

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.assertHeightIsAtLeast
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasScrollAction
import androidx.compose.ui.test.hasSetTextAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.ComposeContentTestRule
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollToNode
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTextReplacement
import androidx.compose.ui.unit.dp
import holdfast.ui.theme.whole

/** Somebody who reads the screen and touches it: by words, never by tags. */
internal class Hand(private val rule: ComposeContentTestRule) {
    /** What says so, in sight or not. */
    fun there(text: String): List<SemanticsNode> = rule.onAllNodes(says(text)).fetchSemanticsNodes()

    /** What is on screen, for a check that fails. */
    fun all(): List<String> =
        rule
            .onAllNodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.Text))
            .fetchSemanticsNodes()
            .flatMap { node -> node.config[SemanticsProperties.Text].map { it.text } }

    /** Waits until the core has answered a touch; scrolls to what stands below what fits. */
    fun sees(text: String) {
        val seen = runCatching { look(text) }
        if (seen.isFailure) throw AssertionError("$text: not among ${all()}", seen.exceptionOrNull())
    }

    private fun look(text: String) =
        rule.waitUntil(5_000) {
            if (shown(text)) return@waitUntil true
            if (rule.onAllNodes(hasScrollAction()).fetchSemanticsNodes().isNotEmpty()) {
                runCatching {
                    val list = rule.onAllNodes(hasScrollAction()).onFirst()
                    list.performScrollToNode(says(text))
                }
            }
            shown(text)
        }

    private fun shown(text: String): Boolean =
        rule.onAllNodes(says(text)).run {
            fetchSemanticsNodes().indices.any { runCatching { get(it).assertIsDisplayed() }.isSuccess }
        }

    /** Touches what says so, once it is there. */
    fun tap(text: String) {
        sees(text)
        touch(says(text))
    }

    /** Touches what says just that: `2`, and not `12`. */
    fun tapJust(text: String) {
        sees(text)
        touch(says(text, all = true))
    }

    /** Touches a sign by what a screen reader calls it. */
    fun tapSign(said: String): Unit = touch(hasContentDescription(said))

    private fun touch(matches: SemanticsMatcher) {
        val node = rule.onAllNodes(matches and hasClickAction()).onFirst()
        node.assertHeightIsAtLeast(48.dp)
        node.performClick()
        rule.waitForIdle()
    }

    /** Types another text in the place of what stands in a field. */
    fun replaces(label: String, text: String) {
        field(label).performTextReplacement(text)
        rule.waitForIdle()
    }

    /** Types into the field that is called so. */
    fun types(label: String, text: String) {
        field(label).performTextInput(text)
        rule.waitForIdle()
    }

    /** What stands in the field that is called so. */
    fun typed(label: String): String =
        field(label).fetchSemanticsNode().config[SemanticsProperties.EditableText].text

    /** A field, brought into view where it stands below what fits. */
    private fun field(label: String): SemanticsNodeInteraction {
        val field = hasContentDescription(label) and hasSetTextAction()
        if (rule.onAllNodes(field).fetchSemanticsNodes().isEmpty()) {
            rule.onAllNodes(hasScrollAction()).onFirst().performScrollToNode(field)
        }
        return rule.onAllNodes(field).onFirst()
    }
}

/** What says so, whichever spaces keep its numbers and units on one line. */
internal fun says(text: String, all: Boolean = false): SemanticsMatcher =
    hasText(text, substring = !all) or hasText(text.whole(), substring = !all)

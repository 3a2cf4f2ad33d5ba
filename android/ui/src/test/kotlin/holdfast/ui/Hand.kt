package holdfast.ui

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.test.assertHeightIsAtLeast
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasScrollAction
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.ComposeContentTestRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performScrollToNode
import androidx.compose.ui.unit.dp

/** Somebody who reads the screen and touches it: by words, never by tags. */
internal class Hand(private val rule: ComposeContentTestRule) {
    /** What says so, in sight or not. */
    fun there(text: String): List<SemanticsNode> =
        rule.onAllNodesWithText(text, substring = true).fetchSemanticsNodes()

    /** Waits until the core has answered a touch; scrolls to what stands below what fits. */
    fun sees(text: String) {
        rule.waitUntil(5_000) {
            if (
                there(text).isEmpty() && rule.onAllNodes(hasScrollAction()).fetchSemanticsNodes().isNotEmpty()
            ) {
                runCatching {
                    val list = rule.onAllNodes(hasScrollAction()).onFirst()
                    list.performScrollToNode(hasText(text, substring = true))
                }
            }
            there(text).isNotEmpty()
        }
        rule.onAllNodesWithText(text, substring = true).onFirst().assertIsDisplayed()
    }

    /** Touches what says so, once it is there. */
    fun tap(text: String) {
        sees(text)
        val node = rule.onAllNodes(hasText(text, substring = true) and hasClickAction()).onFirst()
        node.assertHeightIsAtLeast(48.dp)
        node.performClick()
        rule.waitForIdle()
    }
}

package holdfast.ui

import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.widthIn
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.unit.dp
import holdfast.core.SessionScreen
import holdfast.ui.screens.MoreKeys
import holdfast.ui.screens.QuestionPage
import holdfast.ui.screens.SessionPage
import holdfast.ui.screens.TodayPage
import holdfast.ui.theme.HoldfastTheme
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/** The athlete's app: whatever the shell shows. A still one, for a picture, reads no clock by itself. */
@Composable
public fun HoldfastApp(
    shell: Shell,
    dark: Boolean,
    font: FontFamily = FontFamily.Default,
    moves: Boolean = true,
) {
    HoldfastTheme(dark, shell.phoneWords, font, moves) {
        val screen = shell.screen ?: return@HoldfastTheme
        val scope = rememberCoroutineScope()
        fun does(act: suspend Shell.() -> Unit) {
            scope.launch { shell.act() }
        }
        // A clock is read again at each whole second, for the digits, and when a cue is due.
        LaunchedEffect(screen) {
            untilNext(screen)
                ?.takeIf { moves }
                ?.let {
                    delay(it)
                    shell.look()
                }
        }
        BoxWithConstraints(Modifier.fillMaxSize(), Alignment.TopCenter) {
            val lies = maxWidth > maxHeight && maxHeight < 560.dp
            val wide = Modifier.widthIn(max = if (lies) maxWidth else 560.dp).fillMaxSize()
            val asked = shell.asked
            when {
                asked != null -> QuestionPage(asked, screen, shell.trouble, wide, ::does)
                shell.more -> MoreKeys(screen, wide, ::does)
                shell.place == Place.SESSION -> SessionPage(screen, shell.inline, shell.trouble, wide, ::does)
                else -> TodayPage(screen, shell.trouble, wide, ::does)
            }
        }
    }
}

/** Milliseconds until a running clock shows something else; null while none runs. */
internal fun untilNext(screen: SessionScreen): Long? {
    val clock = screen.here.clock?.takeIf { it.runs }
    val rest = screen.rest
    val left = (clock?.left ?: rest?.left)?.inWholeMilliseconds
    val over = (clock?.over ?: rest?.over)?.inWholeMilliseconds
    val cue = screen.cues.map { it.dueIn.inWholeMilliseconds }.filter { it > 0 }.minOrNull()
    val second =
        when {
            left != null && left > 0 -> (left - 1) % 1000 + 1
            over != null && (clock != null || rest != null) -> 1000 - over % 1000
            else -> null
        }
    return listOfNotNull(second, cue).minOrNull()
}

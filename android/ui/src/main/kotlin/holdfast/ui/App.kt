package holdfast.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.layout.widthIn
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.unit.dp
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.SessionScreen
import holdfast.core.Shade
import holdfast.core.phoneWords
import holdfast.ui.screens.Around
import holdfast.ui.screens.Does
import holdfast.ui.screens.LockedPage
import holdfast.ui.screens.MoreKeys
import holdfast.ui.screens.PagePage
import holdfast.ui.screens.QuestionPage
import holdfast.ui.screens.SessionPage
import holdfast.ui.screens.TodayPage
import holdfast.ui.theme.HoldfastTheme
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.words
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/**
 * The athlete's app: whatever the shell shows. A still one, for a picture, reads no clock by itself.
 *
 * What a touch begins is done in [acts], which outlives what is drawn: an exchange goes on when its page is
 * left, and when a phone is turned.
 */
@Composable
public fun HoldfastApp(
    shell: Shell,
    dark: Boolean,
    font: FontFamily = FontFamily.Default,
    moves: Boolean = true,
    acts: CoroutineScope? = null,
) {
    val chosen = shell.pages.choices
    HoldfastTheme(chosen.shade.isDark(dark), shell.phoneWords, font, moves, chosen.text) {
        val scope = acts ?: rememberCoroutineScope()
        fun does(act: suspend Shell.() -> Unit) {
            scope.launch { shell.act() }
        }
        // A clock is read again at each whole second, for the digits, and when a cue is due.
        LaunchedEffect(shell.screen) {
            shell.screen
                ?.let { untilNext(it) }
                ?.takeIf { moves }
                ?.let {
                    delay(it)
                    shell.look()
                }
        }
        BoxWithConstraints(Modifier.fillMaxSize(), Alignment.TopCenter) {
            if (shell.locked) return@BoxWithConstraints LockedPage(shell.screen, Modifier.fillMaxSize())
            val lies = maxWidth > maxHeight && maxHeight < 560.dp
            if (maxWidth >= TWO_PANES && !lies) return@BoxWithConstraints TwoPanes(shell, ::does)
            val wide = Modifier.widthIn(max = if (lies) maxWidth else 560.dp).fillMaxSize()
            if (!Over(shell, wide, ::does)) shell.screen?.let { TodayPage(it, shell, wide, ::does) }
        }
    }
}

private fun Shade.isDark(phone: Boolean) =
    when (this) {
        Shade.PHONE -> phone
        Shade.LIGHT -> false
        Shade.DARK -> true
    }

/** From this width on home stands at the left and what is open at the right. */
internal val TWO_PANES = 840.dp

/** Home at the left; at the right what lies over it, or what was done. */
@Composable
private fun TwoPanes(shell: Shell, does: Does) {
    val nothing = shell.pages.shown == null && shell.place == Place.TODAY
    LaunchedEffect(nothing) { if (nothing) shell.pages.only(PageAsk.History(null)) }
    Row(Modifier.widthIn(max = 1200.dp).fillMaxSize(), Arrangement.spacedBy(16.dp)) {
        val left = Modifier.weight(1f).fillMaxHeight()
        val home = shell.home
        val inSession = shell.pages.shown == null
        if (home != null) Page(home, shell, null, left, does)
        else shell.screen?.let { TodayPage(it, shell, left, does, inSession) }
        Box(Modifier.width(1.5.dp).fillMaxHeight().background(colours.rule))
        Box(Modifier.weight(1f).fillMaxHeight()) { Over(shell, Modifier.fillMaxSize(), does) }
    }
}

/** What lies over home: a question, more keys, a page, the session. False where nothing does. */
@Composable
private fun Over(shell: Shell, wide: Modifier, does: Does): Boolean {
    val (asked, page, screen) = Triple(shell.asked, shell.pages.shown, shell.screen)
    when {
        asked != null && screen != null ->
            QuestionPage(asked, page?.title ?: screen.here.title, shell.trouble, wide, does)
        shell.more && screen != null -> MoreKeys(screen, wide, does)
        page != null -> Page(page, shell, shell.backTo, wide, does)
        shell.place == Place.SESSION && screen != null ->
            SessionPage(screen, shell.inline, shell.trouble, wide, does)
        else -> return false
    }
    return true
}

@Composable
private fun Page(page: PageScreen, shell: Shell, back: String?, modifier: Modifier, does: Does) {
    val pages = shell.pages
    val around = Around(back, pages.turn, pages.trouble, pages.told, pages.busy)
    PagePage(page, around, modifier, { shell.back() }) { act, typed -> does { does(act, typed) } }
}

/** The way in: a few pages for somebody who starts, then their app. */
@Composable
public fun HoldfastEntry(
    entry: Entry,
    dark: Boolean,
    font: FontFamily = FontFamily.Default,
    moves: Boolean = true,
    acts: CoroutineScope? = null,
) {
    // What the last touch of the way in began goes on in the app: an exchange that brings a log.
    val scope = acts ?: rememberCoroutineScope()
    val shell = entry.shell
    if (shell != null) return HoldfastApp(shell, dark, font, moves, scope)
    HoldfastTheme(dark, phoneWords(), font, moves) {
        Box(Modifier.fillMaxSize(), Alignment.TopCenter) {
            val page = entry.first
            val wide = Modifier.widthIn(max = 560.dp).fillMaxSize()
            if (page == null)
                return@Box entry.trouble?.let { Words(it, modifier = wide.padding(16.dp)) } ?: Unit
            val back = if (entry.canGoBack) words.back else null
            val around = Around(back, entry.step, entry.trouble, busy = entry.busy)
            PagePage(page, around, wide, { entry.back() }) { act, typed ->
                scope.launch { entry.does(act, typed) }
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

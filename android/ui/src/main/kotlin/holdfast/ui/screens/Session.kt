package holdfast.ui.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.lazy.LazyColumn
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.unit.dp
import holdfast.core.Key
import holdfast.core.KeyKind
import holdfast.core.Phase
import holdfast.core.PieceKindView
import holdfast.core.QuestionField
import holdfast.core.Row as LoggedRow
import holdfast.core.SessionScreen
import holdfast.core.SideKey
import holdfast.core.SideKeyKind
import holdfast.ui.Asked
import holdfast.ui.Shell
import holdfast.ui.parts.Head
import holdfast.ui.parts.OneKey
import holdfast.ui.parts.SavedLine
import holdfast.ui.parts.SideKeyOf
import holdfast.ui.parts.Strip
import holdfast.ui.parts.Title
import holdfast.ui.parts.capital
import holdfast.ui.parts.fitInARow
import holdfast.ui.pieceOf
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.words

internal typealias Does = (suspend Shell.() -> Unit) -> Unit

/** What is at hand: a set, a rest, a window, a hold, or the session's end. */
@Composable
internal fun SessionPage(
    screen: SessionScreen,
    inline: Asked?,
    trouble: String?,
    modifier: Modifier,
    does: Does,
) {
    val here = screen.here
    val row = here.row
    val piece = screen.pieces.find { piece -> row != null && pieceOf(row) == piece.name }
    val kind = piece?.kind
    val clock = here.clock
    val pushes = clock?.phase == Phase.PUSH && clock.runs
    val on = if (pushes) colours.onVarnish else null
    BoxWithConstraints(modifier.background(if (pushes) colours.varnish else Color.Transparent)) {
        val large = largeText
        val small = maxHeight < 700.dp || large
        // Lying on its side a phone has the keys at the right.
        val lies = maxWidth > maxHeight
        val body: @Composable () -> Unit = {
            when {
                inline != null -> AskedBody(screen, inline, kind, small, does)
                row is LoggedRow.Set && kind is PieceKindView.Strength -> {
                    val set = kind.view.sets.find { it.set == row.set }
                    if (set != null && clock?.phase == Phase.REST && clock.digits != null) {
                        RestBody(set, clock, small)
                    } else if (set != null) {
                        SetBody(set, screen, kind, small, does)
                    }
                }
                row is LoggedRow.Window && kind is PieceKindView.Interval ->
                    WindowBody(row, kind, clock, lies)
                row is LoggedRow.Hold && kind is PieceKindView.Hold && clock != null ->
                    HoldBody(clock, on, lies)
                else -> PlainBody(screen)
            }
        }
        val head: @Composable () -> Unit = {
            Head((screen.day ?: words.today).takeUnless { large }, place(screen), on) { does { back() } }
        }
        val foot: @Composable () -> Unit = {
            Foot(screen, inline?.screen?.key ?: here.key, trouble, on, does)
        }
        if (lies) {
            Row(Modifier.fillMaxSize().padding(horizontal = 16.dp), Arrangement.spacedBy(16.dp)) {
                Column(Modifier.weight(1f)) {
                    head()
                    Box(Modifier.weight(1f).padding(bottom = 16.dp)) { body() }
                }
                Column(Modifier.width(280.dp).fillMaxHeight(), Arrangement.Bottom) { foot() }
            }
        } else {
            Column(Modifier.fillMaxSize().padding(horizontal = 16.dp)) {
                head()
                Box(Modifier.weight(1f).fillMaxWidth()) { body() }
                foot()
            }
        }
    }
}

/** Where in its piece one is, at the right of the head: the piece itself where there is no more to say. */
private fun place(screen: SessionScreen): String = screen.here.place ?: pieceName(screen)

/** The piece that is at hand; empty for the session's end. */
internal fun pieceName(screen: SessionScreen): String = screen.here.row?.let { pieceOf(it) }.orEmpty()

/** Rows without a body of their own: what they are, and what stands beside them. */
@Composable
private fun PlainBody(screen: SessionScreen) {
    Column(Modifier.fillMaxSize()) {
        Title(screen.here.title, Modifier.padding(top = 4.dp))
        if (screen.here.line != screen.here.title)
            Words(screen.here.line, Role.LEAD, Modifier.padding(top = 8.dp))
        screen.here.notes.forEach { Words(it, Role.LEAD, Modifier.padding(top = 12.dp)) }
    }
}

/** What the key waits for, below what it is about. */
@Composable
private fun AskedBody(
    screen: SessionScreen,
    inline: Asked,
    kind: PieceKindView?,
    small: Boolean,
    does: Does,
) {
    val row = screen.here.row
    // What is not done is said first. What was done stands above the keys, which are asked for, where they
    // keep their place.
    val notes: @Composable () -> Unit = {
        screen.here.notes.forEach { Words(it, Role.BODY, Modifier.padding(top = 8.dp)) }
    }
    val below = row is LoggedRow.Finish && largeText
    val sumBelow = below || screen.cameTo.size > SUM_LINES || screen.here.notes.isNotEmpty()
    LazyColumn(Modifier.fillMaxSize(), verticalArrangement = Arrangement.spacedBy(8.dp)) {
        val set =
            (kind as? PieceKindView.Strength)?.view?.sets?.find { row is LoggedRow.Set && it.set == row.set }
        item {
            Column {
                // A measure's question says what it is. At a large text the load and the question do, for
                // keys need room.
                if (row !is LoggedRow.Measure && !largeText) {
                    Title(
                        if (set == null) screen.here.title else kind.view.movement,
                        Modifier.padding(top = 4.dp),
                    )
                }
                if (!below) notes()
                if (!sumBelow) CameTo(screen, does)
                if (set != null) {
                    LoadLine(set)
                    if (!small && set.load != null) {
                        Strip(kind.view.sets.take(5), set.set) {
                            does { choose(LoggedRow.Set(pieceName(screen), it.set)) }
                        }
                    }
                    if (set.load == null) set.why?.let { Words(it.capital(), colour = colours.soft) }
                }
            }
        }
        // The field says it where it stands alone.
        val alone = inline.screen.fields.singleOrNull()
        val said = (alone as? QuestionField.Choices)?.label != null
        if (!said)
            item {
                Words(
                    inline.screen.title,
                    Role.LEAD,
                    Modifier.padding(top = 8.dp),
                    weight = Role.TITLE.weight,
                )
            }
        fields(inline, does)
        if (below) item { Column { notes() } }
        if (sumBelow) item { CameTo(screen, does) }
    }
}

/** So many lines leave room for the keys on a phone of 640 dp. */
private const val SUM_LINES = 3

/** What is touched: saved and Undo, the keys beside the one key, the one key. */
@Composable
internal fun Foot(screen: SessionScreen, key: Key, trouble: String?, on: Color?, does: Does) {
    val here = screen.here
    val undo = here.sideKeys.find { it.kind == SideKeyKind.UNDO }
    val odd = trouble ?: screen.doubt
    // Beside large letters a word or two: the tick says the rest.
    val saved = screen.savedLine?.let { if (largeText) it.short else it.text }
    val said = odd ?: screen.undone ?: saved
    if (said != null && on == null) {
        SavedLine(said, odd == null, undo?.words) { undo?.let { does { press(it) } } }
    }
    val beside = besides(here.sideKeys, here.row)
    if (beside.isNotEmpty())
        BoxWithConstraints {
            val words = words
            val fits = if (largeText || !fitInARow(inARow(beside, 2, words.more), maxWidth)) 1 else 2
            Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp)) {
                beside.take(fits).forEach { key ->
                    SideKeyOf(key.words, on, key.kind == SideKeyKind.HURTS) { does { press(key) } }
                }
                when {
                    beside.size == fits + 1 ->
                        SideKeyOf(beside[fits].words, on) { does { press(beside[fits]) } }
                    beside.size > fits -> SideKeyOf(words.more, on) { does { showMore() } }
                }
            }
        }
    val below = Modifier.padding(top = 8.dp, bottom = 22.dp)
    // What stands lowest keeps off the edge, where phones have gestures of their own.
    if (key.tap == null && key.asks == null && key.kind != KeyKind.WAITS) Spacer(below)
    else OneKey(key, below, on) { does { press() } }
}

/** What stands in the row with so many keys in it, and the last for the others. */
private fun inARow(keys: List<SideKey>, fits: Int, more: String): List<Pair<String, Boolean>> {
    val shown = if (keys.size == fits + 1) keys else keys.take(fits)
    val others = if (keys.size > fits + 1) listOf(more to false) else emptyList()
    return shown.map { it.words to (it.kind == SideKeyKind.HURTS) } + others
}

/**
 * The keys beside the one key without Undo, which stands by what was saved, and without the one that asks
 * what [row] asks already.
 */
internal fun besides(keys: List<SideKey>, row: LoggedRow?): List<SideKey> =
    keys.filter { it.kind != SideKeyKind.UNDO && !(it.kind == SideKeyKind.OTHER && row is LoggedRow.Measure) }

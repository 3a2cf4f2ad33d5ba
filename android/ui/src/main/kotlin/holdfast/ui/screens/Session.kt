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
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.lazy.LazyColumn
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import holdfast.core.ClockView
import holdfast.core.Key
import holdfast.core.LoadView
import holdfast.core.Phase
import holdfast.core.PieceKindView
import holdfast.core.QuestionField
import holdfast.core.Row as LoggedRow
import holdfast.core.SessionScreen
import holdfast.core.SetView
import holdfast.core.SideKey
import holdfast.core.SideKeyKind
import holdfast.ui.Asked
import holdfast.ui.Shell
import holdfast.ui.parts.Gauge
import holdfast.ui.parts.GaugeColours
import holdfast.ui.parts.Head
import holdfast.ui.parts.LoadedBar
import holdfast.ui.parts.OneKey
import holdfast.ui.parts.SavedLine
import holdfast.ui.parts.SideKeyOf
import holdfast.ui.parts.Strip
import holdfast.ui.parts.Tally
import holdfast.ui.parts.Title
import holdfast.ui.parts.capital
import holdfast.ui.theme.FittedWords
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
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
    val piece = screen.pieces.find { piece -> row != null && holdfast.ui.pieceOf(row) == piece.name }
    val kind = piece?.kind
    val clock = here.clock
    val pushes = clock?.phase == Phase.PUSH && clock.runs
    val on = if (pushes) colours.onVarnish else null
    BoxWithConstraints(modifier.background(if (pushes) colours.varnish else Color.Transparent)) {
        val large = LocalDensity.current.fontScale > 1.35f
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

/** Where in the piece one is, at the right of the head: the piece itself where there is no more to say. */
private fun place(screen: SessionScreen): String =
    screen.here.title.substringAfter(", ", "").ifEmpty { pieceName(screen) }

/** Load and reps, as large as fits. */
@Composable
private fun LoadLine(set: SetView, unit: String) {
    val load = set.load
    if (load == null) {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            FittedWords(set.askedText, 72.dp, 36.dp, Modifier.weight(1f))
            Words(set.loadText, Role.LEAD, Modifier.padding(start = 12.dp, bottom = 6.dp), colours.soft)
        }
        return
    }
    if (set.open) {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            Number(load.number, unit, 108.dp, Modifier.weight(1f))
            Column(Modifier.padding(bottom = 8.dp), horizontalAlignment = Alignment.End) {
                Words(set.repsText, Role.TITLE)
                set.expected?.let { Words(it.text, Role.LEAD) }
            }
        }
        return
    }
    val both = "${load.number}$unit×${set.repsText}000"
    Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
        BoxWithConstraints(Modifier.weight(1f)) {
            // Both numbers in one size, so that neither looks more.
            val size = minOf(108f, maxWidth.value / (both.length * 0.44f)).coerceAtLeast(56f).dp
            Row(verticalAlignment = Alignment.Bottom, horizontalArrangement = Arrangement.spacedBy(10.dp)) {
                Number(load.number, unit, size)
                FittedWords("×", size * 0.68f, size * 0.68f, weight = Role.BODY.weight)
                Number(set.repsText, "", size)
            }
        }
    }
}

@Composable
private fun Number(number: String, unit: String, size: Dp, modifier: Modifier = Modifier) {
    Row(modifier, verticalAlignment = Alignment.Bottom) {
        FittedWords(number, size, size)
        if (unit.isNotEmpty()) {
            FittedWords(
                unit,
                30.dp,
                30.dp,
                Modifier.padding(start = 6.dp, bottom = size * 0.12f),
                weight = Role.STRONG.weight,
            )
        }
    }
}

@Composable
private fun SetBody(
    set: SetView,
    screen: SessionScreen,
    kind: PieceKindView.Strength,
    small: Boolean,
    does: Does,
) {
    val unit = screen.unit.name.lowercase()
    Column(Modifier.fillMaxSize()) {
        Title(kind.view.movement, Modifier.padding(top = 4.dp))
        LoadLine(set, unit)
        set.load?.build?.let { build ->
            LoadedBar(build, null, Modifier.padding(top = 8.dp), if (small) 100.dp else 156.dp)
            Row(Modifier.fillMaxWidth().padding(top = 6.dp), verticalAlignment = Alignment.Bottom) {
                Words(build.short ?: words.emptyBar, Role.PLATES)
                val large = LocalDensity.current.fontScale > 1.35f
                if (build.short != null && !large) {
                    Words(words.eachSide, Role.LEAD, Modifier.padding(start = 9.dp, bottom = 2.dp))
                }
                Spacer(Modifier.weight(1f))
                if (!small) kind.view.bar?.let { Words(it, colour = colours.soft) }
            }
        }
        set.why?.let { Words(it.capital(), colour = colours.soft, modifier = Modifier.padding(top = 6.dp)) }
        Spacer(Modifier.weight(1f))
        if (!small) {
            Strip(kind.view.sets.take(5), set.set) {
                does { choose(LoggedRow.Set(pieceName(screen), it.set)) }
            }
        }
    }
}

private fun pieceName(screen: SessionScreen): String =
    screen.here.row?.let { holdfast.ui.pieceOf(it) }.orEmpty()

@Composable
private fun RestBody(set: SetView, clock: ClockView, small: Boolean) {
    Row(Modifier.fillMaxSize()) {
        Column(Modifier.weight(1f).fillMaxHeight().padding(end = 20.dp)) {
            Change(set.load)
            val large = LocalDensity.current.fontScale > 1.35f
            set.load?.build?.let {
                // The words say it all; at a large text they need the room.
                if (!large)
                    LoadedBar(
                        it,
                        set.load?.change,
                        Modifier.padding(top = 8.dp),
                        if (small) 90.dp else 150.dp,
                    )
            }
            Spacer(Modifier.weight(1f))
            Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
                Column(Modifier.weight(1f)) {
                    FittedWords(clock.digits.orEmpty(), 80.dp, 44.dp, colour = colours.water)
                    if (!small) clock.about?.let { Words(it.capital(), maxLines = 2) }
                }
                Column(Modifier.padding(start = 12.dp), horizontalAlignment = Alignment.End) {
                    Words(words.then, Role.LEAD)
                    Words(set.askedText, Role.TITLE, align = TextAlign.End)
                }
            }
        }
        Gauge(clock, gauge(), atRight = true, Modifier.width(12.dp).fillMaxHeight())
    }
}

/** What to do to the bar: the largest text of a rest. Off comes before on. */
@Composable
private fun Change(load: LoadView?) {
    val change = load?.change
    val lines =
        listOfNotNull(change?.offText?.let { words.takeOff to it }, change?.onText?.let { words.putOn to it })
    if (lines.isEmpty()) {
        FittedWords(words.barIsReady, 56.dp, 36.dp, Modifier.fillMaxWidth())
        return
    }
    for ((verb, mass) in lines) {
        val one = lines.size == 1
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            FittedWords(verb, if (one) 56.dp else 36.dp, 28.dp, Modifier.weight(1f, fill = false))
            Spacer(Modifier.width(12.dp))
            if (LocalDensity.current.fontScale <= 1.35f) {
                Words(words.eachSide, Role.LEAD, Modifier.padding(bottom = 6.dp))
            }
        }
        FittedWords(mass, if (one) 136.dp else 76.dp, 44.dp, Modifier.fillMaxWidth())
    }
}

@Composable
private fun WindowBody(
    row: LoggedRow.Window,
    kind: PieceKindView.Interval,
    clock: ClockView?,
    lies: Boolean,
) {
    val view = kind.view
    val window = view.windows.find { it.window == row.window } ?: return
    Row(Modifier.fillMaxSize()) {
        Column(Modifier.weight(1f).fillMaxHeight().padding(end = 20.dp)) {
            if (!lies) Tally(view.windows, row.window, view.stations.size)
            Title(window.movement, Modifier.padding(top = if (lies) 0.dp else 12.dp))
            Words(window.askedText, Role.LEAD)
            val digits = clock?.digits
            if (digits != null) {
                val colour = if (clock.paused) colours.soft else colours.water
                Floor(digits, colour, Modifier.weight(1f))
                if (!lies) Words(clock.now.capital(), Role.LEAD, Modifier.announced())
            } else {
                Spacer(Modifier.weight(1f))
            }
            view.windows
                .find { it.window == row.window + 1u }
                ?.let {
                    Row(Modifier.padding(top = 12.dp)) {
                        Words(words.next + " ", Role.LEAD, colour = colours.soft)
                        Words(it.askedText, Role.LEAD, weight = Role.TITLE.weight)
                    }
                }
        }
        if (clock != null) Gauge(clock, gauge(), atRight = true, Modifier.width(32.dp).fillMaxHeight())
    }
}

/** The seconds, read from the floor: as large as the room for two digits, and so for each second. */
@Composable
private fun Floor(digits: String, colour: Color, modifier: Modifier) {
    FittedWords(
        digits,
        600.dp,
        72.dp,
        modifier.fillMaxWidth(),
        colour,
        sized = if (digits.length <= 2) "00" else digits,
        fillsHeight = true,
    )
}

@Composable
private fun HoldBody(clock: ClockView, on: Color?, lies: Boolean) {
    val right = clock.turn == 2u
    val ink = on ?: colours.ink
    val staff: @Composable () -> Unit = {
        Gauge(clock, if (on == null) gauge() else pushed(), right, Modifier.width(36.dp).fillMaxHeight())
    }
    Row(Modifier.fillMaxSize(), Arrangement.spacedBy(16.dp)) {
        if (!right) staff()
        Column(Modifier.weight(1f).fillMaxHeight()) {
            FittedWords(
                clock.now.capital(),
                if (lies) 48.dp else 84.dp,
                36.dp,
                // Read aloud when it changes: whoever holds a stretch does not look.
                Modifier.fillMaxWidth().announced(),
                ink,
            )
            val digits = clock.digits
            if (digits != null) {
                Floor(digits, on ?: if (clock.paused) colours.soft else colours.water, Modifier.weight(1f))
            } else {
                Spacer(Modifier.weight(1f))
            }
            Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
                Words(clock.about.orEmpty().capital(), Role.TITLE, Modifier.weight(1f), ink)
                clock.toGo?.let { Words(it, Role.LEAD, colour = ink) }
            }
            if (!lies) {
                clock.next?.let { Words(it.capital(), Role.LEAD, colour = ink) }
                (clock.question ?: clock.wentBy)?.let { Words(it.capital(), colour = ink) }
                Spacer(Modifier.height(12.dp))
            }
        }
        if (right) staff()
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
    LazyColumn(Modifier.fillMaxSize(), verticalArrangement = Arrangement.spacedBy(8.dp)) {
        val set =
            (kind as? PieceKindView.Strength)?.view?.sets?.find { row is LoggedRow.Set && it.set == row.set }
        item {
            Column {
                // A measure's question says what it is.
                if (row !is LoggedRow.Measure) {
                    Title(
                        if (set == null) screen.here.title else kind.view.movement,
                        Modifier.padding(top = 4.dp),
                    )
                }
                screen.here.notes.forEach { Words(it, Role.BODY, Modifier.padding(top = 8.dp)) }
                if (set != null) {
                    LoadLine(set, screen.unit.name.lowercase())
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
    }
}

/** Said by a screen reader as soon as it changes. */
private fun Modifier.announced(): Modifier = semantics { liveRegion = LiveRegionMode.Assertive }

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

/** What is touched: saved and Undo, the keys beside the one key, the one key. */
@Composable
internal fun Foot(screen: SessionScreen, key: Key, trouble: String?, on: Color?, does: Does) {
    val here = screen.here
    val undo = here.sideKeys.find { it.kind == SideKeyKind.UNDO }
    val saved = trouble ?: screen.doubt ?: screen.undone ?: screen.savedText
    if (saved != null && on == null) {
        SavedLine(saved, undo?.words) { undo?.let { does { press(it) } } }
    }
    val beside = besides(here.sideKeys)
    if (beside.isNotEmpty()) {
        Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp)) {
            val fits = if (LocalDensity.current.fontScale > 1.35f) 1 else 2
            beside.take(fits).forEach { key ->
                SideKeyOf(key.words, on, key.kind == SideKeyKind.HURTS) { does { press(key) } }
            }
            when {
                beside.size == fits + 1 -> SideKeyOf(beside[fits].words, on) { does { press(beside[fits]) } }
                beside.size > fits -> SideKeyOf(words.more, on) { does { showMore() } }
            }
        }
    }
    OneKey(key, Modifier.padding(top = 8.dp, bottom = 22.dp), on) { does { press() } }
}

/** The keys beside the one key without Undo, which stands by what was saved. */
internal fun besides(keys: List<SideKey>): List<SideKey> = keys.filter { it.kind != SideKeyKind.UNDO }

@Composable
private fun gauge(): GaugeColours =
    GaugeColours(colours.ground, colours.water, colours.sunk, colours.varnish, colours.varnish)

@Composable
private fun pushed(): GaugeColours {
    val full = colours.onVarnish
    return GaugeColours(colours.varnish, full, full.copy(alpha = 0.26f), full, full)
}

package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import holdfast.core.SetView
import holdfast.core.WindowView
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.style
import holdfast.ui.theme.words

/** Where one is: the way back at the left, the place at the right. */
@Composable
internal fun Head(
    back: String?,
    where: String,
    on: androidx.compose.ui.graphics.Color? = null,
    act: () -> Unit,
) {
    val ink = on ?: colours.ink
    Row(
        Modifier.fillMaxWidth().heightIn(min = 48.dp),
        horizontalArrangement = Arrangement.spacedBy(12.dp),
        verticalAlignment = Alignment.CenterVertically,
    ) {
        val spoken = words.back
        Row(
            Modifier.weight(1f)
                .heightIn(min = 48.dp)
                .touched(act = act)
                // Without its name, which large text has no room for, it is still read aloud.
                .semantics(mergeDescendants = true) { if (back == null) contentDescription = spoken },
            verticalAlignment = Alignment.CenterVertically,
        ) {
            Chevron(back = true, colour = ink)
            Spacer(Modifier.width(8.dp))
            if (back != null) Words(back, Role.STRONG, colour = ink, maxLines = 1)
        }
        Words(
            where,
            Role.BODY,
            colour = on ?: colours.soft,
            align = TextAlign.End,
            weight = Role.SMALL.weight,
        )
    }
}

/**
 * What was saved last, in words, with Undo beside it: it stays until something newer is saved. What was not
 * saved, or is asked about, stands there without the tick.
 */
@Composable
internal fun SavedLine(text: String, saved: Boolean, undo: String?, act: () -> Unit) {
    val undoes: @Composable () -> Unit = { if (undo != null) Underlined(undo, colours.varnish, act = act) }
    val measurer = rememberTextMeasurer()
    val style = style(Role.STRONG)
    val density = LocalDensity.current
    fun wide(text: String) = with(density) { measurer.measure(text.capital(), style).size.width.toDp() }
    BoxWithConstraints {
        // Where Undo would take the room of the words it has a line of its own.
        val undone = undo?.let { wide(it) + 12.dp } ?: 0.dp
        val words = wide(text) + if (saved) 30.dp else 0.dp
        val beside = undone < maxWidth * MOST_UNDO || undone + words < maxWidth
        Column {
            Row(
                Modifier.fillMaxWidth().heightIn(min = 52.dp),
                verticalAlignment = Alignment.CenterVertically,
            ) {
                if (saved) {
                    Tick()
                    Spacer(Modifier.width(10.dp))
                }
                val polite = Modifier.weight(1f).semantics { liveRegion = LiveRegionMode.Polite }
                val lines = if (saved && !beside) 2 else Int.MAX_VALUE
                Words(text.capital(), if (saved) Role.BODY else Role.STRONG, polite, maxLines = lines)
                if (beside) undoes()
            }
            if (!beside) undoes()
        }
    }
}

/** The most of a line that Undo takes. */
private const val MOST_UNDO = 0.4f

/** A line between rows. */
@Composable
internal fun Rule() {
    Box(Modifier.fillMaxWidth().height(1.5.dp).background(colours.rule))
}

/** A heading that a screen reader stops at. */
@Composable
internal fun Title(text: String, modifier: Modifier = Modifier, role: Role = Role.TITLE) {
    Words(text, role, modifier.semantics { heading() })
}

/** A cell for each set: load, reps, and at its foot whether it is done, now or to come. */
@Composable
internal fun Strip(sets: List<SetView>, now: UInt?, choose: (SetView) -> Unit) {
    val shown = colours
    Column {
        Rule()
        Row(Modifier.fillMaxWidth()) {
            sets.forEachIndexed { at, set ->
                if (at > 0) Box(Modifier.width(1.5.dp).height(66.dp).background(shown.rule))
                val done = set.done
                val isNow = set.set == now
                Column(
                    Modifier.weight(1f)
                        .background(if (isNow) shown.raised else shown.ground)
                        .touched { choose(set) }
                        .semantics(mergeDescendants = true) {}
                ) {
                    Row(Modifier.padding(start = if (at == 0) 2.dp else 10.dp, top = 8.dp, end = 6.dp)) {
                        Column(Modifier.weight(1f).heightIn(min = 50.dp)) {
                            val load = done?.loadText ?: set.load?.text
                            if (load != null) Words(load, Role.LEAD, weight = Role.TITLE.weight, maxLines = 1)
                            else Words(set.loadText, Role.SMALL, maxLines = 1)
                            val reps = done?.reps?.toString() ?: set.repsText
                            val times = if (set.open && done == null) reps else "× $reps"
                            Words(times, Role.SMALL, colour = shown.soft, maxLines = 1)
                        }
                        if (done != null) Tick(17.dp, shown.ink)
                    }
                    val foot = if (isNow) shown.varnish else if (done != null) shown.ink else shown.rule
                    Box(Modifier.fillMaxWidth().height(5.dp).background(foot))
                }
            }
        }
    }
}

/** Chalk strokes: done thick, now thick in varnish, to come thin; the words beside them say the same. */
@Composable
internal fun Tally(windows: List<WindowView>, now: UInt, stations: Int) {
    val shown = colours
    val perRound = stations.coerceAtLeast(1)
    val gaps = (windows.size - 1) / perRound
    Canvas(Modifier.size((windows.size * 14 + gaps * 12).dp, 28.dp).clearAndSetSemantics {}) {
        windows.forEachIndexed { at, window ->
            val x = (6 + at * 14 + at / perRound * 12) * density
            val (colour, thick) =
                when {
                    window.window == now -> shown.varnish to 7f
                    window.reps != null -> shown.ink to 5f
                    else -> shown.edge to 2f
                }
            drawLine(
                colour,
                Offset(x + 5 * density, 3 * density),
                Offset(x - 3 * density, 25 * density),
                thick * density,
                StrokeCap.Round,
            )
        }
    }
}

package holdfast.ui.screens

import androidx.compose.foundation.layout.Arrangement
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
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import holdfast.core.ClockView
import holdfast.core.PieceKindView
import holdfast.core.Row as LoggedRow
import holdfast.core.SessionScreen
import holdfast.core.WindowView
import holdfast.ui.parts.Gauge
import holdfast.ui.parts.GaugeColours
import holdfast.ui.parts.Tally
import holdfast.ui.parts.Title
import holdfast.ui.parts.capital
import holdfast.ui.theme.FittedWords
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.words

@Composable
internal fun WindowBody(
    row: LoggedRow.Window,
    kind: PieceKindView.Interval,
    clock: ClockView?,
    lies: Boolean,
) {
    val view = kind.view
    val window = view.windows.find { it.window == row.window } ?: return
    BoxWithConstraints(Modifier.fillMaxSize()) {
        // On a small phone with large letters all but movement, reps and seconds gives way.
        val crowded = !lies && largeText && maxHeight < CROWDED
        Row(Modifier.fillMaxSize()) {
            Column(Modifier.weight(1f).fillMaxHeight().padding(end = 20.dp)) {
                if (!lies && !crowded) Tally(view.windows, row.window, view.stations.size)
                if (crowded) FittedWords(window.askedText, 40.dp, 24.dp, Modifier.fillMaxWidth())
                else {
                    Title(window.movement, Modifier.padding(top = if (lies) 0.dp else 12.dp))
                    Words(window.askedText, Role.LEAD)
                }
                val digits = clock?.digits
                if (digits != null) {
                    val colour = if (clock.paused) colours.soft else colours.water
                    Floor(digits, colour, Modifier.weight(1f))
                    if (!lies && !crowded) Words(clock.now.capital(), Role.LEAD, Modifier.announced())
                } else {
                    Spacer(Modifier.weight(1f))
                }
                if (!crowded) Following(view.windows.find { it.window == row.window + 1u })
            }
            if (clock != null) Gauge(clock, gauge(), atRight = true, Modifier.width(32.dp).fillMaxHeight())
        }
    }
}

/** What the window after this one asks for. */
@Composable
private fun Following(window: WindowView?) {
    if (window == null) return
    Row(Modifier.padding(top = 12.dp)) {
        Words(words.next + " ", Role.LEAD, colour = colours.soft)
        Words(window.askedText, Role.LEAD, weight = Role.TITLE.weight)
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
internal fun HoldBody(clock: ClockView, on: Color?, lies: Boolean) {
    val right = clock.turn == 2u
    val ink = on ?: colours.ink
    val staff: @Composable () -> Unit = {
        Gauge(clock, if (on == null) gauge() else pushed(), right, Modifier.width(36.dp).fillMaxHeight())
    }
    BoxWithConstraints(Modifier.fillMaxSize()) {
        // On a small phone with large letters all but phase, seconds and side gives way.
        val crowded = !lies && largeText && maxHeight < CROWDED
        HoldWords(clock, on, lies, crowded, ink, right, staff)
    }
}

/** Below this height large letters leave no room for what is only good to know. */
internal val CROWDED = 440.dp

@Composable
private fun HoldWords(
    clock: ClockView,
    on: Color?,
    lies: Boolean,
    crowded: Boolean,
    ink: Color,
    right: Boolean,
    staff: @Composable () -> Unit,
) {
    Row(Modifier.fillMaxSize(), Arrangement.spacedBy(16.dp)) {
        if (!right) staff()
        Column(Modifier.weight(1f).fillMaxHeight()) {
            FittedWords(
                clock.now.capital(),
                if (lies || crowded) 48.dp else 84.dp,
                if (crowded) 24.dp else 36.dp,
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
            if (crowded) {
                FittedWords(clock.about.orEmpty().capital(), 44.dp, 24.dp, Modifier.fillMaxWidth(), ink)
            } else
                Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
                    Words(clock.about.orEmpty().capital(), Role.TITLE, Modifier.weight(1f), ink)
                    clock.toGo?.let { Words(it, Role.LEAD, colour = ink) }
                }
            if (!lies && !crowded) {
                clock.next?.let { Words(it.capital(), Role.LEAD, colour = ink) }
                (clock.question ?: clock.wentBy)?.let { Words(it.capital(), colour = ink) }
                Spacer(Modifier.height(12.dp))
            }
        }
        if (right) staff()
    }
}

/** Said by a screen reader as soon as it changes. */
private fun Modifier.announced(): Modifier = semantics { liveRegion = LiveRegionMode.Assertive }

@Composable
internal fun gauge(): GaugeColours =
    GaugeColours(colours.ground, colours.water, colours.sunk, colours.varnish, colours.varnish)

@Composable
private fun pushed(): GaugeColours {
    val full = colours.onVarnish
    return GaugeColours(colours.varnish, full, full.copy(alpha = 0.26f), full, full)
}

/**
 * What stands over a locked phone: the phase and its seconds. No load, no movement, no part of a body, no
 * name.
 */
@Composable
internal fun LockedPage(screen: SessionScreen?, modifier: Modifier) {
    val clock = screen?.here?.clock ?: return
    val digits = clock.digits ?: return
    Column(modifier.padding(16.dp)) {
        Words(clock.now.capital(), Role.TITLE, Modifier.announced())
        Floor(digits, if (clock.paused) colours.soft else colours.water, Modifier.weight(1f))
    }
}

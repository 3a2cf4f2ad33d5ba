package holdfast.ui.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import holdfast.core.ClockView
import holdfast.core.LoadView
import holdfast.core.PieceKindView
import holdfast.core.Row as LoggedRow
import holdfast.core.SessionScreen
import holdfast.core.SetView
import holdfast.ui.parts.Gauge
import holdfast.ui.parts.LoadedBar
import holdfast.ui.parts.Strip
import holdfast.ui.parts.Title
import holdfast.ui.parts.capital
import holdfast.ui.theme.FittedWords
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.words

@Composable
internal fun SetBody(
    set: SetView,
    screen: SessionScreen,
    kind: PieceKindView.Strength,
    small: Boolean,
    does: Does,
) {
    Column(Modifier.fillMaxSize()) {
        Title(kind.view.movement, Modifier.padding(top = 4.dp))
        LoadLine(set)
        set.load?.build?.let { build ->
            // Its words have their room first.
            val room = Modifier.weight(1f, fill = false).padding(top = 8.dp)
            LoadedBar(build, null, room, if (small) 100.dp else 156.dp)
            Row(Modifier.fillMaxWidth().padding(top = 6.dp), verticalAlignment = Alignment.Bottom) {
                Words(build.short ?: words.emptyBar, Role.PLATES)
                val large = largeText
                if (build.short != null && !large) {
                    Words(words.eachSide, Role.LEAD, Modifier.padding(start = 9.dp, bottom = 2.dp))
                }
                Spacer(Modifier.weight(1f))
                if (!small) kind.view.bar?.let { Words(it, colour = colours.soft) }
            }
            // Never left out: without it a bar is loaded with half.
            if (build.short != null && largeText) Words(words.eachSide, Role.SMALL)
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

@Composable
internal fun RestBody(set: SetView, clock: ClockView, small: Boolean) {
    BoxWithConstraints(Modifier.fillMaxSize()) {
        RestWords(set, clock, small, crowded = largeText && maxHeight < CROWDED)
    }
}

@Composable
private fun RestWords(set: SetView, clock: ClockView, small: Boolean, crowded: Boolean) {
    Row(Modifier.fillMaxSize()) {
        Column(Modifier.weight(1f).fillMaxHeight().padding(end = 20.dp)) {
            Change(set.load, crowded)
            val large = largeText
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
            // At a large text the clock has a line of its own.
            if (large) {
                val most = if (crowded) 44.dp else 108.dp
                FittedWords(clock.digits.orEmpty(), most, minOf(most, 44.dp), colour = colours.water)
                if (!crowded) Words("${words.then} ${set.askedText}", Role.LEAD)
            } else
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
private fun Change(load: LoadView?, crowded: Boolean) {
    val change = load?.change
    val lines =
        listOfNotNull(change?.offText?.let { words.takeOff to it }, change?.onText?.let { words.putOn to it })
    if (lines.isEmpty()) {
        FittedWords(words.barIsReady, 56.dp, 36.dp, Modifier.fillMaxWidth())
        return
    }
    for ((verb, mass) in lines) {
        if (crowded) {
            // Verb and mass share a line: both stay.
            Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp), Alignment.CenterVertically) {
                Words(verb, Role.SMALL, maxLines = 1)
                FittedWords(mass, 44.dp, 20.dp, Modifier.weight(1f))
            }
            continue
        }
        val one = lines.size == 1
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            FittedWords(verb, if (one) 56.dp else 36.dp, 28.dp, Modifier.weight(1f, fill = false))
            Spacer(Modifier.width(12.dp))
            if (!largeText) {
                Words(words.eachSide, Role.LEAD, Modifier.padding(bottom = 6.dp))
            }
        }
        FittedWords(mass, if (one) 136.dp else 76.dp, 44.dp, Modifier.fillMaxWidth())
    }
    // Never left out: without it a bar is loaded with half.
    if (largeText) Words(words.eachSide, Role.SMALL, maxLines = 1)
}

/** Load and reps, as large as fits. */
@Composable
internal fun LoadLine(set: SetView) {
    val load = set.load
    if (load == null) {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            FittedWords(set.askedText, 72.dp, 36.dp, Modifier.weight(1f))
            Words(set.loadText, Role.LEAD, Modifier.padding(start = 12.dp, bottom = 6.dp), colours.soft)
        }
        return
    }
    if (set.open && largeText) {
        Number(load.number, load.unit, 72.dp)
        Words(set.repsText, Role.LEAD)
        set.expected?.let { Words(it.text, Role.SMALL) }
        return
    }
    if (set.open) {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
            Number(load.number, load.unit, 108.dp, Modifier.weight(1f))
            Column(Modifier.padding(bottom = 8.dp), horizontalAlignment = Alignment.End) {
                Words(set.repsText, Role.TITLE)
                set.expected?.let { Words(it.text, Role.LEAD) }
            }
        }
        return
    }
    val both = "${load.number}${load.unit}×${set.repsText}000"
    Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.Bottom) {
        BoxWithConstraints(Modifier.weight(1f)) {
            // Both numbers in one size, so that neither looks more.
            val size = minOf(108f, maxWidth.value / (both.length * 0.44f)).coerceAtLeast(56f).dp
            Row(verticalAlignment = Alignment.Bottom, horizontalArrangement = Arrangement.spacedBy(10.dp)) {
                Number(load.number, load.unit, size)
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

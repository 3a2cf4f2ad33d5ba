package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.runtime.withFrameNanos
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import holdfast.core.ClockView
import holdfast.core.Phase
import holdfast.ui.theme.LocalMoves

/** The colours of a gauge: what is to come, what is over, and a mark in it. */
internal data class GaugeColours(
    val ground: Color,
    val full: Color,
    val spent: Color,
    val push: Color,
    val mark: Color,
)

/**
 * The staff at the landing stage: it stands full and sinks. Push stands out as wide blocks and let go as
 * narrow ones; a mark says where to be done. Between two screens of the core it moves by itself.
 */
@Composable
internal fun Gauge(clock: ClockView, colours: GaugeColours, atRight: Boolean, modifier: Modifier = Modifier) {
    val whole = clock.spans.lastOrNull()?.to?.inWholeMilliseconds ?: return
    if (whole <= 0) return
    val moved = moved(clock)
    Canvas(modifier) {
        val spent = (clock.spent.inWholeMilliseconds + moved()).coerceIn(0, whole)
        val at = { ms: Long -> size.height * ms / whole }
        val phased = clock.spans.size > 1
        val gap = if (phased) 2 * density else 0f
        for (span in clock.spans) {
            val wide = if (!phased || span.phase == Phase.PUSH) size.width else size.width * 0.6f
            val left = if (atRight) size.width - wide else 0f
            val colour = if (span.phase == Phase.PUSH) colours.push else colours.full
            val from = at(span.from.inWholeMilliseconds)
            val to = at(span.to.inWholeMilliseconds) - gap
            val sunk = at(spent).coerceIn(from, to)
            drawRect(colours.spent, Offset(left, from), Size(wide, sunk - from))
            drawRect(colour, Offset(left, sunk), Size(wide, to - sunk))
        }
        if (!phased) staff(colours.ground, atRight)
        clock.mark?.let {
            val y = at(it.inWholeMilliseconds)
            drawRect(colours.ground, Offset(0f, y - 5.5f * density), Size(size.width, 11 * density))
            drawRect(colours.mark, Offset(0f, y - 3 * density), Size(size.width, 6 * density))
        }
    }
}

/** The lines of the staff: a long one for every fifth. */
private fun androidx.compose.ui.graphics.drawscope.DrawScope.staff(ground: Color, atRight: Boolean) {
    val lines = 12
    for (line in 1 until lines) {
        val y = size.height * line / lines
        val long = size.width * if (line % 3 == 0) 0.7f else 0.42f
        val left = if (atRight) size.width - long else 0f
        drawRect(ground, Offset(left, y), Size(long, 1.5f * density))
    }
}

/** Milliseconds since the core drew the clock, as frames go by. */
@Composable
private fun moved(clock: ClockView): () -> Long {
    var ms by remember(clock) { mutableStateOf(0L) }
    val moves = LocalMoves.current
    LaunchedEffect(clock) {
        if (!clock.runs || !moves) return@LaunchedEffect
        val begun = withFrameNanos { it }
        while (true) withFrameNanos { ms = (it - begun) / 1_000_000 }
    }
    return { ms }
}

package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.offset
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import holdfast.core.Chart
import holdfast.core.ChartPoint
import holdfast.ui.theme.Colours
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.style

/**
 * A line over time with its band. Every point, level and day comes placed; here it is only stretched onto the
 * paper. A screen reader reads its sentence.
 */
@Composable
internal fun BandChart(chart: Chart) {
    val shown = colours
    val (left, foot) = (if (largeText) 64.dp else 44.dp) to (if (largeText) 44.dp else 28.dp)
    BoxWithConstraints(
        Modifier.fillMaxWidth().padding(vertical = 12.dp).height(226.dp).clearAndSetSemantics {
            contentDescription = chart.said
        }
    ) {
        // First and last point, with what they are, stand inside.
        val (top, right) = 18.dp to 10.dp
        val wide = maxWidth - left - right
        val high = maxHeight - foot - top
        fun x(at: Double): Dp = left + wide * at.toFloat()
        fun y(at: Double): Dp = top + high * (1 - at.toFloat())
        Canvas(Modifier.size(maxWidth, maxHeight)) {
            val at = { point: ChartPoint, value: Double -> Offset(x(point.x).toPx(), y(value).toPx()) }
            for (level in chart.levels) {
                val height = y(level.at).toPx()
                drawLine(shown.rule, Offset(left.toPx(), height), Offset(size.width, height), 1.5.dp.toPx())
            }
            band(chart.points, shown, at)
            line(chart.points, shown, at)
        }
        for (level in chart.levels) {
            Box(Modifier.offset(0.dp, y(level.at) - 11.dp).width(left - 8.dp)) {
                Words(
                    level.words,
                    Role.SMALL,
                    Modifier.fillMaxWidth(),
                    shown.soft,
                    TextAlign.End,
                    maxLines = 1,
                )
            }
        }
        Days(chart, ::x, left, maxWidth, maxHeight - foot + 6.dp)
        Named(chart.first, x(chart.points.first().x), y(chart.points.first().y), TextAlign.Start, left)
        Named(chart.last, x(chart.points.last().x), y(chart.points.last().y), TextAlign.End, left)
    }
}

/** The first and the last day at the ends; between them those that keep clear of both. */
@Composable
private fun Days(chart: Chart, x: (Double) -> Dp, left: Dp, right: Dp, below: Dp) {
    val measurer = rememberTextMeasurer()
    val style = style(Role.SMALL)
    val widths =
        chart.days.map { with(LocalDensity.current) { measurer.measure(it.words, style).size.width.toDp() } }
    val (first, last) = (widths.firstOrNull() ?: return) to widths.last()
    chart.days.forEachIndexed { at, day ->
        val wide = widths[at]
        val from =
            when (at) {
                0 -> left
                chart.days.lastIndex -> right - wide
                else -> x(day.at) - wide / 2
            }
        val clear = from > left + first + APART && from + wide < right - last - APART
        if (at == 0 || at == chart.days.lastIndex || clear)
            Box(Modifier.offset(from, below)) {
                Words(day.words, Role.SMALL, colour = colours.soft, maxLines = 1)
            }
    }
}

/** Two days that are closer read as one. */
private val APART = 8.dp

/** What an end of the line is, above its dot. */
@Composable
private fun Named(text: String, x: Dp, y: Dp, align: TextAlign, left: Dp) {
    val wide = 80.dp
    val from = if (align == TextAlign.Start) maxOf(x + 4.dp, left) else x - wide - 2.dp
    Box(Modifier.offset(from, y - 28.dp).width(wide), Alignment.BottomStart) {
        Words(text, Role.STRONG, Modifier.fillMaxWidth(), align = align, maxLines = 1)
    }
}

private fun DrawScope.band(points: List<ChartPoint>, shown: Colours, at: (ChartPoint, Double) -> Offset) {
    val lows = points.mapNotNull { point -> point.low?.let { at(point, it) } }
    val highs = points.mapNotNull { point -> point.high?.let { at(point, it) } }
    if (lows.size < 2) return
    drawPath(through(highs + lows.reversed()).apply { close() }, shown.tint)
    val outline = Stroke(1.5.dp.toPx())
    drawPath(through(highs), shown.water, style = outline)
    drawPath(through(lows), shown.water, style = outline)
}

private fun DrawScope.line(points: List<ChartPoint>, shown: Colours, at: (ChartPoint, Double) -> Offset) {
    val dots = points.map { at(it, it.y) }
    drawPath(through(dots), shown.water, style = Stroke(3.dp.toPx(), cap = StrokeCap.Round))
    // Many sessions are a line, not a row of beads.
    val radius = if (points.size > 40) 0f else 5.dp.toPx()
    points.zip(dots).forEach { (point, dot) ->
        if (!point.missed) return@forEach drawCircle(shown.water, radius, dot)
        val arm = 6.dp.toPx()
        for (turn in listOf(-1, 1)) {
            val end = Offset(arm, arm * turn)
            drawLine(shown.varnish, dot - end, dot + end, 3.dp.toPx(), StrokeCap.Round)
        }
    }
}

private fun through(points: List<Offset>): Path =
    Path().apply {
        points.forEachIndexed { at, point ->
            if (at == 0) moveTo(point.x, point.y) else lineTo(point.x, point.y)
        }
    }

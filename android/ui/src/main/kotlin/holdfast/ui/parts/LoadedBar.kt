package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import holdfast.core.BuildView
import holdfast.core.ChangeView
import holdfast.core.PlateView
import holdfast.ui.theme.Colours
import holdfast.ui.theme.colours
import holdfast.ui.theme.plateColours
import holdfast.ui.theme.style

private const val LARGEST_MM = 450f

/**
 * One side of the bar: its middle at the left, the sleeve to the right, heaviest inside. Diameters are to
 * scale; a plate is as thick as its number needs to stand upright. With a change what goes on stands off the
 * stack with an arrow, and what comes off is a dashed outline beyond it.
 */
@Composable
internal fun LoadedBar(
    build: BuildView,
    change: ChangeView?,
    modifier: Modifier = Modifier,
    high: Dp = 156.dp,
) {
    val shown = colours
    val measurer = rememberTextMeasurer()
    val number = style(26.sp, FontWeight.Bold, shown.ink, tight = 1.0f)
    val sides = remember(build, change) { Stack.of(build, change) }
    Canvas(modifier.fillMaxWidth().height(high).semantics { contentDescription = build.spoken }) {
        val scale = density
        // Squeezed by large letters it shows nothing that can be read: then its words say it.
        if (size.height < LEAST_HIGH.toPx()) return@Canvas
        val thick = sides.thickness(size.width / scale) * scale
        val middle = size.height / 2
        // The bar, its collar and the sleeve.
        drawRect(shown.edge, Offset(0f, middle - 5 * scale), Size(36 * scale, 10 * scale))
        val sleeve = Size(size.width - 46 * scale, 18 * scale)
        rounded(shown.sunk, shown.edge, Offset(44 * scale, middle - 9 * scale), sleeve, 1.5f * scale)
        drawRoundRect(
            shown.edge,
            Offset(34 * scale, middle - 21 * scale),
            Size(13 * scale, 42 * scale),
            CornerRadius(2 * scale),
        )
        var left = 49 * scale
        fun stand(plates: List<PlateView>, dashed: Boolean) {
            plates.forEach {
                plate(it, left, thick * sides.width(it), shown, measurer, number, dashed)
                left += thick * sides.width(it) + 2 * scale
            }
        }
        stand(sides.lie, dashed = false)
        for ((plates, inwards) in listOf(sides.goOn to true, sides.comeOff to false)) {
            if (plates.isEmpty()) continue
            arrow(shown.varnish, Offset(left + 3 * scale, middle), inwards, scale)
            left += 29 * scale
            stand(plates, dashed = !inwards)
        }
    }
}

/** From this height on a plate's number can be read. */
private val LEAST_HIGH = 56.dp

/** What lies on a side, what goes on and what comes off, each from the middle outwards. */
private class Stack(val lie: List<PlateView>, val goOn: List<PlateView>, val comeOff: List<PlateView>) {
    /** How thick the thickest plate is, in dp, so that all fit. */
    fun thickness(width: Float): Float {
        val plates = lie + goOn + comeOff
        val gaps = (if (goOn.isEmpty()) 0 else 30) + (if (comeOff.isEmpty()) 0 else 30) + 2 * plates.size
        val room = width - 60 - gaps
        val parts = plates.sumOf { width(it).toDouble() }.toFloat().coerceAtLeast(1f)
        return (room / parts).coerceIn(20f, 62f)
    }

    /** A small plate is thinner. */
    fun width(plate: PlateView): Float = if (plate.diameterMm >= 450u) 1f else 0.9f

    companion object {
        fun of(build: BuildView, change: ChangeView?): Stack {
            if (change == null) return Stack(build.plates, emptyList(), emptyList())
            val on = build.plates.filter { it.putOn }
            return Stack(build.plates.filter { !it.putOn }, on, change.off.asReversed())
        }
    }
}

private fun DrawScope.plate(
    plate: PlateView,
    left: Float,
    wide: Float,
    shown: Colours,
    measurer: TextMeasurer,
    number: TextStyle,
    dashed: Boolean,
) {
    val scale = density
    val high = (size.height - 8 * scale) * plate.diameterMm.toInt() / LARGEST_MM
    val at = Offset(left, (size.height - high) / 2)
    val of = plateColours(plate.colour)
    val ink = if (dashed) shown.ink else of.number
    if (dashed) {
        val dash =
            Stroke(2 * scale, pathEffect = PathEffect.dashPathEffect(floatArrayOf(6 * scale, 4 * scale)))
        drawRoundRect(shown.ink, at, Size(wide, high), CornerRadius(4 * scale), style = dash)
    } else {
        rounded(of.plate, shown.ink, at, Size(wide, high), 2 * scale)
    }
    // The number is as large as the plate is thick, and stands upright.
    val sized = number.copy(color = ink)
    val natural = measurer.measure(plate.number, sized).size
    val fit = ((wide - 6 * scale) / natural.width).coerceAtMost(1f).coerceAtMost(high / natural.height)
    val drawn =
        measurer.measure(
            plate.number,
            sized.copy(fontSize = number.fontSize * fit, lineHeight = number.lineHeight * fit),
        )
    drawText(
        drawn,
        topLeft = Offset(at.x + (wide - drawn.size.width) / 2, (size.height - drawn.size.height) / 2),
    )
}

private fun DrawScope.rounded(fill: Color, edge: Color, at: Offset, size: Size, thick: Float) {
    val radius = CornerRadius(4 * density)
    drawRoundRect(fill, at, size, radius)
    drawRoundRect(edge, at, size, radius, style = Stroke(thick))
}

private fun DrawScope.arrow(colour: Color, at: Offset, inwards: Boolean, scale: Float) {
    val (tip, tail) = if (inwards) at.x to at.x + 22 * scale else at.x + 22 * scale to at.x
    val head = if (inwards) 10 * scale else -10 * scale
    drawLine(colour, Offset(tip + head, at.y), Offset(tail, at.y), 4 * scale)
    drawPath(
        Path().apply {
            moveTo(tip, at.y)
            lineTo(tip + head, at.y - 8 * scale)
            lineTo(tip + head, at.y + 8 * scale)
            close()
        },
        colour,
    )
}

package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.StrokeJoin
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import holdfast.core.PageSign
import holdfast.ui.theme.colours

/** A full diamond: pain, always with its word beside it. */
@Composable
internal fun Diamond(size: Dp = 20.dp, colour: Color = colours.lead) {
    Canvas(Modifier.size(size)) {
        val (w, h) = this.size.width to this.size.height
        drawPath(
            polygon(listOf(Offset(w / 2, 0f), Offset(w, h / 2), Offset(w / 2, h), Offset(0f, h / 2))),
            colour,
        )
    }
}

/** What is saved or done. */
@Composable
internal fun Tick(size: Dp = 20.dp, colour: Color = colours.water) {
    Canvas(Modifier.size(size)) {
        line(colour, 3.2f / 20, listOf(0.15f to 0.575f, 0.4f to 0.825f, 0.875f to 0.2f))
    }
}

/** The way back, or on. */
@Composable
internal fun Chevron(back: Boolean, colour: Color = colours.ink) {
    Canvas(Modifier.size(12.dp, 20.dp)) {
        val points = listOf(0.83f to 0.1f, 0.17f to 0.5f, 0.83f to 0.9f)
        line(colour, 2.6f / 12, if (back) points else points.map { (x, y) -> 1 - x to y })
    }
}

/** A line that turns off to the right: an option. */
@Composable
internal fun Turn(size: Dp = 26.dp, colour: Color = colours.ink) {
    Canvas(Modifier.size(size)) {
        line(colour, 3f / 24, listOf(0.12f to 0.85f, 0.12f to 0.4f, 0.7f to 0.4f))
        val (w, h) = this.size.width to this.size.height
        drawPath(
            polygon(listOf(Offset(w * 0.62f, h * 0.14f), Offset(w, h * 0.4f), Offset(w * 0.62f, h * 0.66f))),
            colour,
        )
    }
}

/** The sign of a row: a shape that tells it without its colour. The word beside it says the same. */
@Composable
internal fun SignOf(sign: PageSign) {
    val colour = signColour(sign)
    if (sign == PageSign.PAIN) return Diamond()
    if (sign == PageSign.OPTION) return Turn(20.dp)
    Canvas(Modifier.size(20.dp)) {
        val (w, h) = this.size.width to this.size.height
        val thick = 2.6f / 20
        when (sign) {
            PageSign.STALLED ->
                for (y in listOf(0.35f, 0.7f)) line(colour, 4f / 20, listOf(0.1f to y, 0.9f to y))
            PageSign.UP ->
                drawPath(
                    polygon(listOf(Offset(w / 2, h * 0.1f), Offset(w, h * 0.9f), Offset(0f, h * 0.9f))),
                    colour,
                )
            PageSign.RUSHED ->
                for (x in listOf(0f, 0.5f)) {
                    val wedge = listOf(Offset(w * x, 0f), Offset(w * (x + 0.5f), h / 2), Offset(w * x, h))
                    drawPath(polygon(wedge), colour)
                }
            PageSign.AWAY -> {
                // A mooring left empty: a ring in pieces.
                val ring = Stroke(thick * w)
                for (part in 0 until 6) drawArc(colour, part * 60f, 32f, false, style = ring)
            }
            PageSign.NOT_ARRIVED -> corners(colour, thick)
            PageSign.CHECK -> {
                frame(colour, thick)
                line(
                    colour,
                    thick,
                    listOf(0.38f to 0.36f, 0.5f to 0.28f, 0.62f to 0.38f, 0.5f to 0.54f, 0.5f to 0.6f),
                )
                drawCircle(colour, w * 0.06f, Offset(w / 2, h * 0.74f))
            }
            PageSign.ASIDE -> {
                frame(colour, thick)
                line(colour, thick, listOf(0.3f to 0.5f, 0.7f to 0.5f))
            }
            PageSign.VERSIONS -> {
                line(
                    colour,
                    thick,
                    listOf(0.1f to 0.1f, 0.7f to 0.1f, 0.7f to 0.7f, 0.1f to 0.7f, 0.1f to 0.1f),
                )
                line(
                    colour,
                    thick,
                    listOf(0.85f to 0.3f, 0.9f to 0.3f, 0.9f to 0.9f, 0.3f to 0.9f, 0.3f to 0.85f),
                )
            }
            PageSign.NOTE ->
                for (y in listOf(0.2f, 0.5f, 0.8f)) line(
                    colour,
                    thick,
                    listOf(0.1f to y, (if (y > 0.7f) 0.6f else 0.9f) to y),
                )
            PageSign.SENT -> {
                line(colour, thick, listOf(0.5f to 0.9f, 0.5f to 0.12f))
                line(colour, thick, listOf(0.2f to 0.42f, 0.5f to 0.12f, 0.8f to 0.42f))
            }
            else -> {}
        }
    }
}

/** The colour of a sign and its word. */
@Composable
internal fun signColour(sign: PageSign): Color =
    when (sign) {
        PageSign.PAIN -> colours.lead
        PageSign.STALLED,
        PageSign.CHECK,
        PageSign.VERSIONS -> colours.varnish
        PageSign.UP -> colours.water
        else -> colours.ink
    }

private fun DrawScope.frame(colour: Color, thick: Float) =
    line(
        colour,
        thick,
        listOf(0.08f to 0.08f, 0.92f to 0.08f, 0.92f to 0.92f, 0.08f to 0.92f, 0.08f to 0.08f),
    )

private fun DrawScope.corners(colour: Color, thick: Float) {
    for ((x, y) in listOf(0.1f to 0.1f, 0.9f to 0.1f, 0.9f to 0.9f, 0.1f to 0.9f)) {
        val (inX, inY) = (if (x < 0.5f) x + 0.25f else x - 0.25f) to (if (y < 0.5f) y + 0.25f else y - 0.25f)
        line(colour, thick, listOf(inX to y, x to y, x to inY))
    }
}

private fun polygon(points: List<Offset>): Path =
    Path().apply {
        points.forEachIndexed { at, point ->
            if (at == 0) moveTo(point.x, point.y) else lineTo(point.x, point.y)
        }
        close()
    }

private fun DrawScope.line(colour: Color, thick: Float, points: List<Pair<Float, Float>>) {
    val path = Path()
    points.forEachIndexed { at, (x, y) ->
        if (at == 0) path.moveTo(x * size.width, y * size.height)
        else path.lineTo(x * size.width, y * size.height)
    }
    val stroke = Stroke(thick * size.width, cap = StrokeCap.Round, join = StrokeJoin.Round)
    drawPath(path, colour, style = stroke)
}

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

package holdfast.ui.theme

import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.text.BasicText
import androidx.compose.runtime.Composable
import androidx.compose.runtime.ReadOnlyComposable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.LineHeightStyle
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.text.style.TextOverflow
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.TextUnit
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.isSpecified
import androidx.compose.ui.unit.sp

/**
 * The roles of text. Their sizes follow the reader's text size; what must be read from the floor is fitted
 * instead.
 */
internal enum class Role(val size: Int, val weight: FontWeight) {
    HOME(34, FontWeight.Bold),
    TITLE(28, FontWeight.Bold),
    KEY(27, FontWeight.Bold),
    PLATES(29, FontWeight.Bold),
    LEAD(22, FontWeight.Medium),
    BODY(17, FontWeight.Normal),
    STRONG(17, FontWeight.SemiBold),
    SMALL(15, FontWeight.Medium),
}

/**
 * How many times a role grows at a text size: body and smaller in full, larger ones less, as a reader who
 * doubles the text needs the small to grow and the large to stay on the screen.
 */
internal fun Role.size(fontScale: Float): Float {
    val most = if (size <= 17) 2f else if (size < 28) 1.64f else 1.62f
    return size * fontScale.coerceIn(1f, most)
}

/** True for a text size at which what stands beside the large numbers gives way to them. */
internal val largeText: Boolean
    @Composable @ReadOnlyComposable get() = LocalDensity.current.fontScale > 1.35f

/** Text in a role. */
@Composable
internal fun Words(
    text: String,
    role: Role = Role.BODY,
    modifier: Modifier = Modifier,
    colour: Color = colours.ink,
    align: TextAlign = TextAlign.Start,
    weight: FontWeight = role.weight,
    maxLines: Int = Int.MAX_VALUE,
) {
    val shown = text.whole()
    // As large as the role says; smaller where a word would break in the middle.
    var fits by remember(shown, role) { mutableStateOf(1f) }
    BasicText(
        shown,
        modifier,
        style(role, weight, colour, align, fits),
        onTextLayout = { laid ->
            laid.broken()?.let { word -> fits = maxOf(fits * laid.size.width / word, LEAST_FIT) }
        },
        maxLines = maxLines,
        overflow = TextOverflow.Ellipsis,
    )
}

/** Below this part of its size nothing is made to fit. */
private const val LEAST_FIT = 0.4f

/** How wide the widest word is that goes on in the next line; null where none does. */
internal fun TextLayoutResult.broken(): Float? {
    val text = layoutInput.text.text
    val ends = (0 until lineCount - 1).map { getLineEnd(it) }.filter { it in 1 until text.length }
    val inWord = ends.filter { text[it - 1] !in BREAKS && text[it] !in BREAKS }
    return inWord.maxOfOrNull { end ->
        val from = text.lastIndexOfAny(BREAKS, end) + 1
        val to = text.indexOfAny(BREAKS, end).takeIf { it > 0 } ?: text.length
        // A little more, for widths are whole pixels.
        (from until to).sumOf { getBoundingBox(it).width.toDouble() }.toFloat() * 1.03f
    }
}

/** Where a line may end. */
private val BREAKS = charArrayOf(' ', '\n', '-', '\u00AD')

/** A role's own style: it says how far it grows, so the system's own growing is taken out. */
@Composable
internal fun style(
    role: Role,
    weight: FontWeight = role.weight,
    colour: Color = colours.ink,
    align: TextAlign = TextAlign.Start,
    part: Float = 1f,
): TextStyle {
    val size = with(LocalDensity.current) { (role.size(fontScale) * part).dp.toSp() }
    return style(size, weight, colour, align)
}

/**
 * The same text with each number and its unit on one line: a line's end between `10.9` and `cm` makes two
 * things of one.
 */
internal fun String.whole(): String = numberAndUnit.replace(this) { it.value.replace(' ', NO_BREAK) }

private const val NO_BREAK = '\u00A0'

private val numberAndUnit = Regex("""\d (kg|lb|cm|min|s|°)(?!\w)|(?<=\w) × (?=\d)|\d (of|von) (?=\d)""")

@Composable
internal fun style(
    size: TextUnit,
    weight: FontWeight,
    colour: Color,
    align: TextAlign = TextAlign.Start,
    tight: Float = 1.22f,
): TextStyle =
    TextStyle(
        color = colour,
        fontSize = size,
        fontWeight = weight,
        fontFamily = LocalFont.current,
        // Digits of one width: a clock does not jump.
        fontFeatureSettings = "tnum",
        textAlign = align,
        lineHeight = if (size.isSpecified) size * tight else 20.sp,
        lineHeightStyle = LineHeightStyle(LineHeightStyle.Alignment.Center, LineHeightStyle.Trim.None),
    )

/**
 * Text as large as fits one line, between two sizes. `sized` is what the size is worked out for, so that a
 * count keeps its size while it has as many digits.
 */
@Composable
internal fun FittedWords(
    text: String,
    most: Dp,
    least: Dp,
    modifier: Modifier = Modifier,
    colour: Color = colours.ink,
    weight: FontWeight = FontWeight.Bold,
    sized: String = text,
    fillsHeight: Boolean = false,
) {
    BoxWithConstraints(modifier) {
        val measurer = rememberTextMeasurer()
        val density = LocalDensity.current
        val base = style(with(density) { 100.dp.toSp() }, weight, colour, tight = 1.0f)
        val width = constraints.maxWidth
        val height = if (fillsHeight && constraints.hasBoundedHeight) maxHeight else Dp.Infinity
        val size =
            remember(sized, width, most, least, base, height, density) {
                val wide = measurer.measure(sized, base).size.width
                val fits = if (wide == 0) most else (100f * width / wide).dp
                val high = if (height == Dp.Infinity) most else height
                // Where it takes two lines no word breaks in the middle.
                val word = sized.split(' ').maxOf { measurer.measure(it, base).size.width }
                val whole = if (word == 0) most else (98f * width / word).dp
                minOf(minOf(fits, most, high).coerceAtLeast(least), whole)
            }
        BasicText(
            text,
            style = style(with(density) { size.toSp() }, weight, colour, tight = 1.0f),
            maxLines = if (size > least) 1 else Int.MAX_VALUE,
            softWrap = size <= least,
        )
    }
}

package holdfast.ui.parts

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.clickable
import androidx.compose.foundation.interaction.MutableInteractionSource
import androidx.compose.foundation.interaction.collectIsFocusedAsState
import androidx.compose.foundation.interaction.collectIsPressedAsState
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.RowScope
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawWithContent
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.Role as Semantic
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.rememberTextMeasurer
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Dp
import androidx.compose.ui.unit.dp
import holdfast.core.Key
import holdfast.core.KeyKind
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.style

/** A touch without a ripple: it darkens at once, and what it does is seen in what comes next. */
@Composable
internal fun Modifier.touched(enabled: Boolean = true, label: String? = null, act: () -> Unit): Modifier {
    val source = remember { MutableInteractionSource() }
    return felt(source)
        .clickable(
            interactionSource = source,
            indication = null,
            enabled = enabled,
            onClickLabel = label,
            role = Semantic.Button,
            onClick = act,
        )
}

/** Darker while it is pressed; with a ring where a keyboard stands, in two tones that show on any ground. */
@Composable
private fun Modifier.felt(source: MutableInteractionSource): Modifier {
    val pressed by source.collectIsPressedAsState()
    val focused by source.collectIsFocusedAsState()
    val (ink, raised) = colours.ink to colours.raised
    return drawWithContent {
        drawContent()
        if (pressed) drawRect(ink, alpha = PRESSED)
        if (focused) {
            drawRect(ink, style = Stroke(5.dp.toPx()))
            drawRect(raised, style = Stroke(1.5.dp.toPx()))
        }
    }
}

private const val PRESSED = 0.08f

/** The core's one key; none where there is nothing to press. */
@Composable
internal fun OneKey(key: Key, modifier: Modifier = Modifier, on: Color? = null, act: () -> Unit) {
    val acts = key.tap != null || key.asks != null
    if (acts || key.kind == KeyKind.WAITS) OneKey(key.kind, key.words, key.more, modifier, on, acts, act)
}

/**
 * The one key: filled where it saves, outlined where it moves on, sunk while it waits. Nobody has to read it
 * to know whether it writes to the log.
 */
@Composable
internal fun OneKey(
    kind: KeyKind,
    words: String,
    more: String?,
    modifier: Modifier = Modifier,
    on: Color? = null,
    acts: Boolean = true,
    act: () -> Unit,
) {
    val shown = colours
    val (ground, ink) =
        when (kind) {
            KeyKind.SAVES -> shown.varnish to shown.onVarnish
            KeyKind.MOVES -> Color.Transparent to (on ?: shown.varnish)
            KeyKind.WAITS -> shown.sunk to shown.ink
            KeyKind.CARE -> Color.Transparent to (on ?: shown.lead)
        }
    val edge = if (kind == KeyKind.WAITS) shown.sunk else if (kind == KeyKind.SAVES) shown.varnish else ink
    val shape = RoundedCornerShape(8.dp)
    Column(
        modifier
            .fillMaxWidth()
            .heightIn(min = 92.dp)
            .background(ground, shape)
            .border(3.dp, edge, shape)
            .touched(enabled = acts, act = act)
            .semantics(mergeDescendants = true) {}
            .padding(horizontal = 20.dp, vertical = 12.dp),
        verticalArrangement = Arrangement.Center,
    ) {
        Words(words, Role.KEY, colour = ink)
        // At a large text its first line alone says what it does, or what it waits for.
        val said = more?.takeUnless { largeText }
        said?.let { Words(it, Role.BODY, Modifier.padding(top = 4.dp), ink, weight = Role.SMALL.weight) }
    }
}

/** Its share of the row: what has a sign beside its words needs room for both. */
private fun share(text: String, hurts: Boolean): Float =
    (text.length + if (hurts) 4 else 0).coerceIn(9, 15).toFloat()

/** True where each of these keys has room in one row for its longest word: no word breaks in the middle. */
@Composable
internal fun fitInARow(keys: List<Pair<String, Boolean>>, wide: Dp): Boolean {
    val measurer = rememberTextMeasurer()
    val style = style(Role.STRONG)
    val density = LocalDensity.current
    val shares = keys.map { (text, hurts) -> share(text, hurts) }
    val room = wide - 8.dp * (keys.size - 1)
    return keys.zip(shares).all { (key, share) ->
        val (text, hurts) = key
        val longest = text.split(' ').maxOf { measurer.measure(it, style).size.width }
        val signed = if (hurts) 28.dp else 0.dp
        with(density) { longest.toDp() } + 18.dp + signed <= room * (share / shares.sum())
    }
}

/** A key beside the one key, in a row of at most three. */
@Composable
internal fun RowScope.SideKeyOf(text: String, on: Color? = null, hurts: Boolean = false, act: () -> Unit) {
    val shape = RoundedCornerShape(6.dp)
    val shown = colours
    Row(
        Modifier.weight(share(text, hurts))
            .heightIn(min = 56.dp)
            .background(if (on == null) shown.raised else Color.Transparent, shape)
            .border(1.5.dp, on ?: shown.edge, shape)
            .touched(act = act)
            .semantics(mergeDescendants = true) {}
            .padding(horizontal = 8.dp, vertical = 4.dp),
        horizontalArrangement = Arrangement.Center,
        verticalAlignment = Alignment.CenterVertically,
    ) {
        if (hurts) {
            Diamond(colour = on ?: shown.lead)
            Spacer(Modifier.width(8.dp))
        }
        Words(text.capital(), Role.STRONG, colour = on ?: shown.ink, align = TextAlign.Center)
    }
}

/** Words that are a touch, underlined: a place to go to, or Undo. */
@Composable
internal fun Underlined(text: String, colour: Color = colours.ink, act: () -> Unit) {
    Column(
        Modifier.heightIn(min = 48.dp).touched(act = act).semantics(mergeDescendants = true) {}.padding(4.dp),
        horizontalAlignment = Alignment.CenterHorizontally,
        verticalArrangement = Arrangement.Center,
    ) {
        // Its line is as wide as the word, whatever the text size.
        Column(Modifier.width(androidx.compose.foundation.layout.IntrinsicSize.Max)) {
            Words(text.capital(), Role.STRONG, colour = colour)
            Box(Modifier.fillMaxWidth().heightIn(min = 2.dp).background(colour))
        }
    }
}

/** A key to choose: chosen it is ink, from care on framed in lead. */
@Composable
internal fun ChoiceKey(
    words: String,
    more: List<String>,
    chosen: Boolean,
    care: Boolean,
    modifier: Modifier = Modifier,
    role: Role = Role.STRONG,
    high: Dp = 56.dp,
    left: Boolean = false,
    act: () -> Unit,
) {
    val shown = colours
    val shape = RoundedCornerShape(6.dp)
    val (ground, ink) =
        if (chosen) shown.ink to shown.ground
        else shown.raised to if (care && !left) shown.lead else shown.ink
    val edge = if (chosen) shown.ink else if (care) shown.lead else shown.edge
    Column(
        modifier
            .heightIn(min = high)
            .background(ground, shape)
            .border(if (care) 2.5.dp else 1.5.dp, edge, shape)
            .touched(act = act)
            .semantics(mergeDescendants = true) { selected = chosen }
            .padding(horizontal = if (left) 16.dp else 4.dp, vertical = if (left) 12.dp else 4.dp),
        verticalArrangement = Arrangement.Center,
        horizontalAlignment = if (left) Alignment.Start else Alignment.CenterHorizontally,
    ) {
        val align = if (left) TextAlign.Start else TextAlign.Center
        Words(words.capital(), role, colour = ink, align = align)
        more.forEach { Words(it, Role.SMALL, colour = if (chosen) ink else shown.soft, align = align) }
    }
}

/** With a capital at its start: words of the core stand in lines too. An address stays as it is written. */
internal fun String.capital(): String = if ("://" in this) this else replaceFirstChar { it.uppercase() }

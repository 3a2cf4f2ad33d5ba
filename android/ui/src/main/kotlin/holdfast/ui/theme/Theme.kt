package holdfast.ui.theme

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.ReadOnlyComposable
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.unit.Density
import holdfast.core.PhoneWords
import holdfast.core.TextSize

internal val LocalFont = staticCompositionLocalOf<FontFamily> { FontFamily.Default }
/** False where nothing moves by itself. */
internal val LocalMoves = staticCompositionLocalOf { true }
internal val LocalWords = staticCompositionLocalOf<PhoneWords> { error("no words") }

/** Colours, font and words of all that is drawn inside. */
@Composable
public fun HoldfastTheme(
    dark: Boolean,
    words: PhoneWords,
    font: FontFamily = FontFamily.Default,
    moves: Boolean = true,
    text: TextSize = TextSize.PHONE,
    content: @Composable () -> Unit,
) {
    val colours = if (dark) Colours.dark else Colours.light
    val phone = LocalDensity.current
    CompositionLocalProvider(
        LocalDensity provides Density(phone.density, text.scaled(phone.fontScale)),
        LocalColours provides colours,
        LocalFont provides font,
        LocalWords provides words,
        LocalMoves provides moves,
    ) {
        Box(Modifier.fillMaxSize().background(colours.ground)) { content() }
    }
}

/** The colours in force. */
internal val colours: Colours
    @Composable @ReadOnlyComposable get() = LocalColours.current

/** The words in force. */
internal val words: PhoneWords
    @Composable @ReadOnlyComposable get() = LocalWords.current

/**
 * Beside what the phone's own setting does, up to twice the usual size: the screens hold that without loss.
 */
private fun TextSize.scaled(phone: Float): Float =
    when (this) {
        TextSize.PHONE -> phone
        TextSize.LARGER -> (phone * 1.3f).coerceIn(phone, maxOf(phone, 2f))
        TextSize.LARGEST -> maxOf(phone, 2f)
    }

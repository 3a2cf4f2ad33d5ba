package holdfast.ui.theme

import androidx.compose.runtime.Immutable
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.Color

/**
 * What is drawn in which colour. Two grounds, one ink, three meanings: varnish to press and for where one is,
 * water for time and what was measured, lead for pain and nothing else.
 */
@Immutable
public data class Colours(
    val ground: Color,
    val raised: Color,
    val sunk: Color,
    val tint: Color,
    val ink: Color,
    val soft: Color,
    val varnish: Color,
    val onVarnish: Color,
    val water: Color,
    val lead: Color,
    val edge: Color,
    val rule: Color,
    val care: Color = Color(0xFF8C160E),
    val onCare: Color = Color(0xFFFFFFFF),
    val isDark: Boolean,
) {
    public companion object {
        /** The limewashed wall of the cellar. */
        public val light: Colours =
            Colours(
                ground = Color(0xFFF7F4EC),
                raised = Color(0xFFFFFDF7),
                sunk = Color(0xFFE8E3D5),
                tint = Color(0xFFCFE2E3),
                ink = Color(0xFF171D20),
                soft = Color(0xFF434D53),
                varnish = Color(0xFF6A3508),
                onVarnish = Color(0xFFFFFDF7),
                water = Color(0xFF0A5160),
                lead = Color(0xFF98190F),
                edge = Color(0xFF736F5C),
                rule = Color(0xFFCFC9B8),
                isDark = false,
            )

        /** A slate. */
        public val dark: Colours =
            Colours(
                ground = Color(0xFF11171A),
                raised = Color(0xFF1A2226),
                sunk = Color(0xFF28343A),
                tint = Color(0xFF1F434B),
                ink = Color(0xFFF3F0E6),
                soft = Color(0xFFBCC5C6),
                varnish = Color(0xFFF0B45C),
                onVarnish = Color(0xFF1B1204),
                water = Color(0xFF7FD0D8),
                lead = Color(0xFFFF9F90),
                edge = Color(0xFF82929A),
                rule = Color(0xFF36434A),
                isDark = true,
            )
    }
}

internal val LocalColours = staticCompositionLocalOf { Colours.light }

/** A plate as it lies on the bar: its colour by the federations' rules, and that of its number. */
public data class PlateColours(val plate: Color, val number: Color)

private val numberDark = Color(0xFF171D20)
private val numberLight = Color(0xFFFFFFFF)

/**
 * The colours of the federations' plates; iron for all others. The core says which a plate has, and cites the
 * rules.
 */
public fun plateColours(colour: holdfast.core.Colour?): PlateColours =
    when (colour) {
        holdfast.core.Colour.RED -> PlateColours(Color(0xFFA81E1E), numberLight)
        holdfast.core.Colour.BLUE -> PlateColours(Color(0xFF1B4A94), numberLight)
        holdfast.core.Colour.YELLOW -> PlateColours(Color(0xFFE9BE1B), numberDark)
        holdfast.core.Colour.GREEN -> PlateColours(Color(0xFF1E6B3C), numberLight)
        holdfast.core.Colour.WHITE -> PlateColours(Color(0xFFFBFAF5), numberDark)
        null -> PlateColours(Color(0xFF4F5A60), numberLight)
    }

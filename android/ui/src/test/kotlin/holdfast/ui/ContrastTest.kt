package holdfast.ui

import androidx.compose.ui.graphics.Color
import holdfast.core.Colour
import holdfast.ui.theme.Colours
import holdfast.ui.theme.plateColours
import kotlin.math.pow
import kotlin.test.assertTrue
import org.junit.Test

/**
 * What can be read, computed from the theme by WCAG 2.2 (relative luminance, contrast ratio; success criteria
 * 1.4.3, 1.4.11).
 */
class ContrastTest {
    private fun part(value: Float): Double =
        if (value <= 0.04045) value / 12.92 else ((value + 0.055) / 1.055).pow(2.4)

    private fun luminance(colour: Color): Double =
        0.2126 * part(colour.red) + 0.7152 * part(colour.green) + 0.0722 * part(colour.blue)

    private fun contrast(one: Color, other: Color): Double {
        val (light, dark) = listOf(luminance(one), luminance(other)).sortedDescending()
        return (light + 0.05) / (dark + 0.05)
    }

    /** The ratio of black on white is 21 by the definition. */
    @Test
    fun black_on_white_is_21() {
        assertTrue(contrast(Color.Black, Color.White) in 20.99..21.01)
    }

    @Test
    fun text_is_read_in_the_cellar() {
        for (theme in listOf(Colours.light, Colours.dark)) {
            val text =
                with(theme) {
                    listOf(ground, raised).flatMap { below ->
                        listOf(ink, soft, varnish, water, lead).map { it to below }
                    } +
                        listOf(
                            onVarnish to varnish,
                            onCare to care,
                            ink to sunk,
                            ground to ink,
                            onVarnish to varnish,
                        )
                }
            for ((over, below) in text) {
                val ratio = contrast(over, below)
                assertTrue(ratio >= 7.0, "$over on $below: $ratio")
            }
        }
    }

    @Test
    fun edges_and_the_gauge_are_seen() {
        for (theme in listOf(Colours.light, Colours.dark)) {
            with(theme) {
                for ((over, below) in
                    listOf(edge to ground, edge to raised, water to sunk, varnish to sunk, ground to water)) {
                    val ratio = contrast(over, below)
                    assertTrue(ratio >= 3.0, "$over on $below: $ratio")
                }
                // The spent part of a gauge while the whole screen is varnish.
                val spent = onVarnish.copy(alpha = 0.26f)
                val mixed =
                    Color(
                        spent.red * 0.26f + varnish.red * 0.74f,
                        spent.green * 0.26f + varnish.green * 0.74f,
                        spent.blue * 0.26f + varnish.blue * 0.74f,
                    )
                assertTrue(contrast(onVarnish, mixed) >= 3.0)
            }
        }
    }

    @Test
    fun the_number_on_every_plate_is_read() {
        for (colour in Colour.entries + null) {
            val plate = plateColours(colour)
            val ratio = contrast(plate.number, plate.plate)
            assertTrue(ratio >= 4.5, "$colour: $ratio")
        }
    }
}

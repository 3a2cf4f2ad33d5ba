package holdfast.ui.parts

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.aspectRatio
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.input.PasswordVisualTransformation
import androidx.compose.ui.text.input.VisualTransformation
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import holdfast.core.PageCode
import holdfast.core.PageField
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.style

/** A code to be scanned: black on white whatever the theme, with the quiet zone that scanners ask for. */
@Composable
internal fun QrCode(code: PageCode, small: Boolean, spoken: String) {
    val side = code.side.toInt()
    Column(
        Modifier.fillMaxWidth().padding(bottom = 12.dp),
        horizontalAlignment = Alignment.CenterHorizontally,
    ) {
        Box(
            Modifier.widthIn(max = if (small) 264.dp else 300.dp)
                .fillMaxWidth()
                .aspectRatio(1f)
                .background(Color.White)
                .border(1.5.dp, colours.edge)
                .semantics { contentDescription = spoken }
        ) {
            Canvas(Modifier.fillMaxWidth().aspectRatio(1f)) {
                val module = size.width / (side + 2 * QUIET)
                code.dark.forEachIndexed { at, dark ->
                    val (x, y) = (at % side + QUIET) * module to (at / side + QUIET) * module
                    // A little larger than its square, so that no hairline of white runs between two.
                    if (dark) drawRect(Color.Black, Offset(x, y), Size(module + 0.5f, module + 0.5f))
                }
            }
        }
    }
}

/** Modules of white around a code (ISO/IEC 18004). */
private const val QUIET = 4

/** One line to be typed. */
@Composable
internal fun TypedLine(field: PageField, text: String, typed: (String) -> Unit) {
    Column(Modifier.padding(top = 4.dp, bottom = 12.dp)) {
        Words(field.label, Role.STRONG)
        val shape = RoundedCornerShape(6.dp)
        BasicTextField(
            text,
            typed,
            Modifier.fillMaxWidth()
                .padding(top = 6.dp)
                .heightIn(min = 56.dp)
                .background(colours.raised, shape)
                .border(1.5.dp, colours.edge, shape)
                .padding(horizontal = 12.dp, vertical = 16.dp)
                .semantics { contentDescription = field.label },
            textStyle = style(17.sp, Role.BODY.weight, colours.ink),
            singleLine = true,
            visualTransformation =
                if (field.secret) PasswordVisualTransformation() else VisualTransformation.None,
            cursorBrush = SolidColor(colours.ink),
        )
    }
}

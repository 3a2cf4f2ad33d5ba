package holdfast.app

import androidx.activity.ComponentActivity
import androidx.activity.compose.setContent
import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.text.BasicText
import androidx.compose.runtime.collectAsState
import androidx.compose.runtime.getValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import holdfast.ui.HoldfastEntry
import kotlinx.coroutines.flow.StateFlow

// The one file that hosts Compose in an activity. Compose for Android comes from Google's repository, which
// not every
// machine reaches; where it cannot be had this file is compiled against stub/kotlin, two declarations of the
// same names
// that draw nothing. So the checks prove its types. That it draws is seen on a phone.

/** What the system's bars cover, in pixels. */
internal data class Bars(val left: Int, val top: Int, val right: Int, val bottom: Int)

/** Fills an activity with the screens. */
internal fun show(activity: ComponentActivity, app: HoldfastApplication, bars: StateFlow<Bars>): Unit =
    activity.setContent {
        val dark = isSystemInDarkTheme()
        val covered by bars.collectAsState()
        val told by app.told.collectAsState()
        val around =
            with(LocalDensity.current) {
                Modifier.padding(
                    covered.left.toDp(),
                    covered.top.toDp(),
                    covered.right.toDp(),
                    covered.bottom.toDp(),
                )
            }
        Box(Modifier.fillMaxSize().background(if (dark) Color.Black else Color.White).then(around)) {
            Column {
                told?.let { sentence ->
                    BasicText(
                        sentence,
                        Modifier.fillMaxWidth()
                            .background(if (dark) Color.White else Color.Black)
                            .clickable { app.tell(null) }
                            .semantics { liveRegion = LiveRegionMode.Polite }
                            .padding(16.dp),
                        TextStyle(if (dark) Color.Black else Color.White, 18.sp),
                    )
                }
                HoldfastEntry(app.entry, dark, acts = app.scope)
            }
        }
    }

package holdfast.ui.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import holdfast.core.SessionScreen
import holdfast.core.SumView
import holdfast.ui.parts.Rule
import holdfast.ui.parts.Tick
import holdfast.ui.parts.touched
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText

/** What each piece came to, and what is next: a line each. A touch goes there, to log more or to correct. */
@Composable
internal fun CameTo(screen: SessionScreen, does: Does) {
    if (screen.cameTo.isEmpty()) return
    Column(Modifier.padding(top = 8.dp)) {
        for (sum in screen.cameTo) {
            Rule()
            Sum(sum, does)
        }
        Rule()
    }
}

@Composable
private fun Sum(sum: SumView, does: Does) {
    val to = sum.row
    val touch = if (to == null) Modifier else Modifier.touched { does { choose(to) } }
    val line = touch.fillMaxWidth().heightIn(min = 48.dp).semantics(mergeDescendants = true) {}
    // Two columns take the width of a line that large letters need.
    if (largeText)
        return Column(line.padding(vertical = 6.dp)) {
            Words(sum.title, colour = colours.soft)
            What(sum)
        }
    Row(line.padding(vertical = 8.dp), Arrangement.spacedBy(12.dp), Alignment.Top) {
        Words(sum.title, modifier = Modifier.weight(1f), colour = colours.soft)
        Column(Modifier.weight(2f)) { What(sum) }
        // The column of what was done is as wide without a tick.
        if (sum.all) Tick(18.dp, colours.ink) else Spacer(Modifier.width(18.dp))
    }
}

@Composable
private fun What(sum: SumView) {
    Words(sum.done, Role.STRONG)
    sum.more.forEach { Words(it, Role.SMALL, colour = colours.soft) }
}

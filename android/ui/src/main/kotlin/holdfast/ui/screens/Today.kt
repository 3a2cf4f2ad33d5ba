package holdfast.ui.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ExperimentalLayoutApi
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.IntrinsicSize
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.lazy.LazyColumn
import androidx.compose.foundation.lazy.items
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import holdfast.core.KeyKind
import holdfast.core.NoticeKind
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PieceKindView
import holdfast.core.PieceState
import holdfast.core.PieceView
import holdfast.core.SessionScreen
import holdfast.core.SessionState
import holdfast.core.SetView
import holdfast.core.StrengthView
import holdfast.ui.Shell
import holdfast.ui.parts.OneKey
import holdfast.ui.parts.Rule
import holdfast.ui.parts.Tick
import holdfast.ui.parts.Title
import holdfast.ui.parts.Underlined
import holdfast.ui.parts.touched
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.words

/**
 * The day: its pieces with their loads, what should be read first, and the key that begins it. Where the
 * session stands [beside] it no key leads there.
 */
@Composable
internal fun TodayPage(
    screen: SessionScreen,
    shell: Shell,
    modifier: Modifier,
    does: Does,
    beside: Boolean = false,
) {
    val trouble = shell.trouble
    Column(modifier.padding(horizontal = 16.dp)) {
        LazyColumn(Modifier.weight(1f).fillMaxWidth()) {
            item {
                Row(
                    Modifier.fillMaxWidth().heightIn(min = 48.dp),
                    verticalAlignment = Alignment.CenterVertically,
                ) {
                    Words(screen.block.orEmpty(), Role.STRONG, Modifier.weight(1f))
                    Words(screen.name, Role.BODY, colour = colours.soft)
                }
                Title(screen.day ?: screen.heading, role = Role.HOME)
                if (screen.day != null) Words(screen.heading, colour = colours.soft)
                Spacer(Modifier.height(12.dp))
            }
            val above = trouble.takeUnless { screen.state == SessionState.FINISHED }
            above?.let { item { Notice(it, NoticeKind.WARNING) } }
            items(screen.notices) { Notice(it.text, it.kind) }
            items(screen.notes) { Notice(it.text, NoticeKind.INFO) }
            // Of a day that is over it is said what it came to.
            if (screen.state == SessionState.FINISHED) item { CameTo(screen, does) }
            else items(screen.pieces) { Piece(it, screen.state, does) }
        }
        Places(shell, does)
        val below = Modifier.padding(top = 8.dp, bottom = 22.dp)
        when (screen.state) {
            // Back to what is at hand, unless that stands beside it.
            SessionState.RUNNING ->
                if (!beside)
                    OneKey(KeyKind.MOVES, screen.here.title, screen.here.key.words, below) { does { goOn() } }
            // What was saved last can be taken back, and the session rated again.
            SessionState.FINISHED -> Foot(screen, screen.here.key, trouble, null, does)
            else -> {
                val joins = shell.joins
                val opens = joins?.does as? PageAct.Open
                // Where there is no crew there is no plan, and this is what helps.
                if (opens != null && screen.here.key.kind == KeyKind.WAITS)
                    OneKey(KeyKind.MOVES, joins.words, joins.more, below) { does { open(opens.page) } }
                else OneKey(screen.here.key, below) { does { press() } }
            }
        }
    }
}

/** The places beside the session, as underlined words; below them what the exchange stands at. */
@OptIn(ExperimentalLayoutApi::class)
@Composable
private fun Places(shell: Shell, does: Does) {
    // At a large text they take a second line.
    FlowRow(Modifier.fillMaxWidth().padding(top = 8.dp), Arrangement.SpaceBetween) {
        Underlined(words.history) { does { open(PageAsk.History(null)) } }
        Underlined(words.exchange) { does { open(PageAsk.Exchange(emptyList())) } }
        Underlined(words.thisPhone) { does { open(PageAsk.ThisPhone(pages.choices)) } }
    }
    val waits = shell.waits.takeUnless { largeText } ?: return
    Words(waits, Role.SMALL, Modifier.fillMaxWidth(), colours.soft, TextAlign.Center)
}

@Composable
private fun Notice(text: String, kind: NoticeKind) {
    val colour = if (kind == NoticeKind.CARE) colours.lead else colours.varnish
    Row(Modifier.fillMaxWidth().height(IntrinsicSize.Min).padding(bottom = 12.dp)) {
        Box(Modifier.width(5.dp).fillMaxHeight().background(colour))
        Words(text, Role.BODY, Modifier.padding(start = 12.dp, top = 4.dp, bottom = 4.dp))
    }
}

@Composable
private fun Piece(piece: PieceView, state: SessionState, does: Does) {
    val to = piece.standsAt
    val touch = if (to == null) Modifier else Modifier.touched { does { choose(to) } }
    Column(touch.fillMaxWidth().semantics(mergeDescendants = true) {}) {
        Row(
            Modifier.fillMaxWidth().heightIn(min = 52.dp).padding(vertical = 8.dp),
            Arrangement.spacedBy(12.dp),
            Alignment.CenterVertically,
        ) {
            Words(piece.name, Role.LEAD, Modifier.weight(1f), weight = Role.TITLE.weight)
            if (piece.state == PieceState.DONE) Tick(18.dp, colours.ink)
            // Before it begins nobody has done any of it.
            val begun = state == SessionState.RUNNING || state == SessionState.FINISHED
            if (begun) piece.progress?.let { Words(it, colour = colours.soft) }
        }
        when (val kind = piece.kind) {
            is PieceKindView.Strength -> Sets(kind.view)
            is PieceKindView.Interval -> Words(kind.view.heading, colour = colours.soft)
            is PieceKindView.Hold -> Words(kind.view.heading, colour = colours.soft)
            is PieceKindView.Note -> Words(kind.text)
        }
        Spacer(Modifier.height(12.dp))
        Rule()
    }
}

/** A line a set: its number, load and reps, the plates of a side at the right. */
@Composable
private fun Sets(view: StrengthView) {
    Words(view.heading, colour = colours.soft)
    if (view.warmUp.isNotEmpty()) {
        val said = view.warmUp.joinToString(", ") { it.text }
        Words("${words.warmUp}: $said", colour = colours.soft)
    }
    view.sets.forEach { SetLine(it) }
}

@Composable
private fun SetLine(set: SetView) {
    val done = set.done
    val plates = set.load?.build?.short.takeIf { done == null }
    // Beside large letters the plates have no room: they stand below.
    val large = largeText
    Row(Modifier.fillMaxWidth().heightIn(min = 38.dp), verticalAlignment = Alignment.CenterVertically) {
        Words(set.set.toString(), Role.SMALL, Modifier.width(24.dp), colours.soft)
        Column(Modifier.weight(1f)) {
            Words(done?.text ?: set.askedText, Role.LEAD, weight = Role.STRONG.weight)
            if (large) plates?.let { Words(it, colour = colours.soft) }
        }
        if (done != null) Tick(16.dp, colours.ink)
        if (!large) plates?.let { Words(it, colour = colours.soft, align = TextAlign.End) }
    }
}

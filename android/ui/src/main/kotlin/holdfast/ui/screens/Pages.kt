package holdfast.ui.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.gestures.scrollBy
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.lazy.LazyColumn
import androidx.compose.foundation.lazy.LazyListScope
import androidx.compose.foundation.lazy.LazyListState
import androidx.compose.foundation.lazy.items
import androidx.compose.foundation.lazy.rememberLazyListState
import androidx.compose.foundation.shape.CircleShape
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.runtime.Composable
import androidx.compose.runtime.SideEffect
import androidx.compose.runtime.derivedStateOf
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateListOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import holdfast.core.KeyKind
import holdfast.core.PageAct
import holdfast.core.PageBlock
import holdfast.core.PageKey
import holdfast.core.PageNumber
import holdfast.core.PageRow
import holdfast.core.PageScreen
import holdfast.ui.parts.BandChart
import holdfast.ui.parts.Chevron
import holdfast.ui.parts.Head
import holdfast.ui.parts.OneKey
import holdfast.ui.parts.QrCode
import holdfast.ui.parts.Rule
import holdfast.ui.parts.SideKeyOf
import holdfast.ui.parts.SignOf
import holdfast.ui.parts.Title
import holdfast.ui.parts.TypedLine
import holdfast.ui.parts.capital
import holdfast.ui.parts.signColour
import holdfast.ui.parts.touched
import holdfast.ui.theme.FittedWords
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.words
import kotlinx.coroutines.launch

/** How a page stands: what leads back from it, and what was told or went wrong. */
internal data class Around(
    val back: String?,
    val turn: Int,
    val trouble: String? = null,
    val told: List<String> = emptyList(),
    val busy: Boolean = false,
)

/** Any place beside a session, from the top down, with its key at the foot. */
@Composable
internal fun PagePage(
    page: PageScreen,
    around: Around,
    modifier: Modifier,
    back: () -> Unit,
    does: (PageAct, List<String>) -> Unit,
) {
    key(around.turn) {
        val typed = remember { mutableStateListOf(*page.fields.map { it.text }.toTypedArray()) }
        // A page that is drawn again may ask for more.
        while (typed.size < page.fields.size) typed.add(page.fields[typed.size].text)
        val act = { act: PageAct -> if (!around.busy) does(act, typed.toList()) }
        val list = rememberLazyListState()
        val unread = page.key?.readFirst == true && !list.wasRead()
        Column(modifier.padding(horizontal = 16.dp)) {
            if (around.back == null) {
                Row(
                    Modifier.fillMaxWidth().heightIn(min = 48.dp),
                    Arrangement.End,
                    Alignment.CenterVertically,
                ) {
                    page.beside?.let { Words(it, colour = colours.soft) }
                }
            } else Head(around.back, page.beside.takeUnless { largeText }.orEmpty(), act = back)
            LazyColumn(Modifier.weight(1f).fillMaxWidth(), list) {
                item { Title(page.title.capital(), Modifier.padding(bottom = 12.dp)) }
                around.trouble?.let { item { Trouble(it) } }
                items(around.told) { Paragraph(it, Role.STRONG) }
                page.number?.let { item { Number(it) } }
                page.block?.let { item { Framed(it) } }
                rows(page.choices, act)
                if (page.choices.isNotEmpty()) item { Spacer(Modifier.height(10.dp)) }
                // Words are read as soon as it is said what for; of a code and a chart all is said first.
                val first = if (page.words.isEmpty()) page.said.size else 1
                items(page.said.take(first)) { Paragraph(it) }
                page.code?.let { item { QrCode(it, page.rows.isNotEmpty(), page.title) } }
                if (page.words.isNotEmpty()) item { ReadOut(page.words) }
                items(page.said.drop(first)) { Paragraph(it) }
                page.chart?.let { item { BandChart(it) } }
                items(page.fields.size) { at -> TypedLine(page.fields[at], typed[at]) { typed[at] = it } }
                rows(page.rows, act)
                item { Spacer(Modifier.height(16.dp)) }
            }
            val untyped = page.fields.indices.any { !page.fields[it].optional && typed[it].isBlank() }
            val key =
                page.key?.let { key -> key.typedFirst?.takeIf { untyped }?.let { key.waiting(it) } ?: key }
            if (unread) ReadOn(page, list, act) else Keys(page.besideKey, key, act)
            if (page.key == null) Spacer(Modifier.height(22.dp))
        }
    }
}

/** The same key while it waits for something, which it says. */
private fun PageKey.waiting(what: String): PageKey = copy(more = what, saves = false, does = null)

private fun LazyListScope.rows(rows: List<PageRow>, act: (PageAct) -> Unit) {
    items(rows) { row ->
        row.heading?.let {
            Words(it, Role.STRONG, Modifier.padding(top = 20.dp, bottom = 6.dp).semantics { heading() })
        }
        Rule()
        OneRow(row, act)
    }
    if (rows.isNotEmpty()) item { Rule() }
}

@Composable
private fun OneRow(row: PageRow, act: (PageAct) -> Unit) {
    val does = row.does
    val touch = if (does == null) Modifier else Modifier.touched { act(does) }
    val chosen = row.chosen
    Row(
        touch
            .fillMaxWidth()
            .heightIn(min = 56.dp)
            .semantics(mergeDescendants = true) { if (chosen != null) selected = chosen }
            .padding(vertical = 8.dp),
        Arrangement.spacedBy(12.dp),
        Alignment.CenterVertically,
    ) {
        Column(Modifier.weight(1f)) {
            if (row.title.isNotEmpty()) Words(row.title.capital(), Role.LEAD, weight = Role.STRONG.weight)
            val sign = row.sign
            if (sign != null || row.text != null) {
                Row(horizontalArrangement = Arrangement.spacedBy(10.dp)) {
                    sign?.let { SignOf(it) }
                    Column {
                        row.word?.let { word ->
                            Words(
                                word.capital(),
                                Role.STRONG,
                                colour = sign?.let { signColour(it) } ?: colours.ink,
                            )
                        }
                        row.text?.let {
                            Words(it, colour = if (row.word == null) colours.soft else colours.ink)
                        }
                    }
                }
            }
        }
        row.value?.let { Words(it, Role.BODY, colour = colours.soft, align = TextAlign.End) }
        when {
            chosen != null -> Chosen(chosen)
            does is PageAct.Open -> Chevron(back = false)
        }
    }
}

/** A ring, filled once its row is chosen: an empty one says that it can be, in the place of another. */
@Composable
private fun Chosen(chosen: Boolean) {
    Box(Modifier.size(30.dp).border(2.dp, colours.edge, CircleShape), Alignment.Center) {
        if (chosen) Box(Modifier.size(16.dp).background(colours.varnish, CircleShape))
    }
}

@Composable
private fun Trouble(text: String) {
    val assertive = Modifier.semantics { liveRegion = LiveRegionMode.Assertive }
    Words(text, Role.STRONG, assertive.padding(bottom = 12.dp), colours.varnish)
}

@Composable
private fun Paragraph(text: String, role: Role = Role.BODY) {
    Words(text, role, Modifier.padding(bottom = 10.dp))
}

@Composable
private fun Number(number: PageNumber) {
    val about =
        @Composable {
            Column {
                number.about.forEachIndexed { at, line ->
                    Words(line, if (at == 0) Role.BODY else Role.STRONG)
                }
            }
        }
    Column(Modifier.padding(bottom = 12.dp).semantics(mergeDescendants = true) {}) {
        Row(verticalAlignment = Alignment.CenterVertically) {
            FittedWords(number.number, 84.dp, 48.dp, Modifier.weight(1f, fill = false))
            Words(number.unit, Role.LEAD, Modifier.padding(start = 8.dp, end = 16.dp))
            if (!largeText) Box(Modifier.weight(1.4f)) { about() }
        }
        if (largeText) about()
    }
}

@Composable
private fun Framed(block: PageBlock) {
    val shape = RoundedCornerShape(6.dp)
    Column(
        Modifier.fillMaxWidth()
            .padding(bottom = 12.dp)
            .background(colours.raised, shape)
            .border(1.5.dp, colours.edge, shape)
            .padding(16.dp)
    ) {
        Words(block.heading, Role.LEAD, weight = Role.TITLE.weight)
        Words(block.text, modifier = Modifier.padding(top = 6.dp))
    }
}

/** Words to be read out: as large as the pair that is longest allows. */
@Composable
private fun ReadOut(words: List<String>) {
    Column(Modifier.padding(vertical = 12.dp)) {
        Rule()
        for (pair in words.chunked(if (largeText) 1 else 2)) {
            Row(Modifier.fillMaxWidth().padding(vertical = 8.dp)) {
                pair.forEach { FittedWords(it, 40.dp, 24.dp, Modifier.weight(1f)) }
            }
        }
        Rule()
    }
}

/** True once the end of a list was in view. */
@Composable
private fun LazyListState.wasRead(): Boolean {
    var seen by remember { mutableStateOf(false) }
    val atEnd by remember {
        derivedStateOf {
            val last = layoutInfo.visibleItemsInfo.lastOrNull()
            // Before it is laid out there is no last one, and nothing was read.
            last != null &&
                last.index == layoutInfo.totalItemsCount - 1 &&
                last.offset + last.size <= layoutInfo.viewportEndOffset
        }
    }
    if (atEnd) SideEffect { seen = true }
    return seen || atEnd
}

/** In place of what cannot be undone, until all above it was in view; what only turns away can be touched. */
@Composable
private fun ReadOn(page: PageScreen, list: LazyListState, act: (PageAct) -> Unit) {
    val scope = rememberCoroutineScope()
    Keys(page.besideKey.filterNot { it.saves }, null, act)
    OneKey(KeyKind.MOVES, words.readOn, null, Modifier.padding(top = 8.dp, bottom = 22.dp)) {
        scope.launch { list.scrollBy(list.layoutInfo.viewportSize.height * MOST_OF_A_PAGE) }
    }
}

/** A line or two of the page before stay in view. */
private const val MOST_OF_A_PAGE = 0.8f

@Composable
private fun Keys(beside: List<PageKey>, key: PageKey?, act: (PageAct) -> Unit) {
    if (beside.isNotEmpty()) {
        Row(Modifier.fillMaxWidth().padding(top = 8.dp), Arrangement.spacedBy(8.dp)) {
            for (key in beside) SideKeyOf(key.words) { key.does?.let(act) }
        }
    }
    key?.let { PageKeyOf(it, act) }
}

@Composable
private fun PageKeyOf(key: PageKey, act: (PageAct) -> Unit) {
    val does = key.does
    val kind = if (does == null) KeyKind.WAITS else if (key.saves) KeyKind.SAVES else KeyKind.MOVES
    val below = Modifier.padding(top = 8.dp, bottom = 22.dp)
    OneKey(kind, key.words, key.more, below, acts = does != null) { does?.let(act) }
}

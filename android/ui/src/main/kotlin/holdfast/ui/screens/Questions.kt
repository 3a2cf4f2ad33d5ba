package holdfast.ui.screens

import androidx.compose.foundation.background
import androidx.compose.foundation.border
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.heightIn
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.layout.widthIn
import androidx.compose.foundation.lazy.LazyColumn
import androidx.compose.foundation.lazy.LazyListScope
import androidx.compose.foundation.lazy.items
import androidx.compose.foundation.shape.RoundedCornerShape
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.foundation.text.KeyboardOptions
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.focus.FocusRequester
import androidx.compose.ui.focus.focusRequester
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.input.KeyboardType
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.dp
import androidx.compose.ui.unit.sp
import holdfast.core.Answers
import holdfast.core.Choice
import holdfast.core.ChoiceShape
import holdfast.core.QuestionField
import holdfast.core.QuestionSign
import holdfast.core.SessionScreen
import holdfast.ui.Asked
import holdfast.ui.parts.ChoiceKey
import holdfast.ui.parts.Diamond
import holdfast.ui.parts.Head
import holdfast.ui.parts.OneKey
import holdfast.ui.parts.SideKeyOf
import holdfast.ui.parts.Title
import holdfast.ui.parts.Turn
import holdfast.ui.parts.Underlined
import holdfast.ui.parts.capital
import holdfast.ui.parts.touched
import holdfast.ui.theme.FittedWords
import holdfast.ui.theme.Role
import holdfast.ui.theme.Words
import holdfast.ui.theme.colours
import holdfast.ui.theme.largeText
import holdfast.ui.theme.style
import holdfast.ui.theme.words

/**
 * A question: whatever the core gives to touch, and the key that takes the answer. [over] is what it lies
 * over.
 */
@Composable
internal fun QuestionPage(asked: Asked, over: String, trouble: String?, modifier: Modifier, does: Does) {
    val question = asked.screen
    Column(modifier.padding(horizontal = 16.dp)) {
        Head(over, question.about.orEmpty()) { does { back() } }
        LazyColumn(Modifier.weight(1f).fillMaxWidth(), verticalArrangement = Arrangement.spacedBy(8.dp)) {
            item {
                Row(Modifier.padding(bottom = 8.dp), verticalAlignment = Alignment.CenterVertically) {
                    when (question.sign) {
                        QuestionSign.PAIN -> Diamond(26.dp)
                        QuestionSign.OPTION -> Turn()
                        null -> {}
                    }
                    if (question.sign != null) Spacer(Modifier.width(12.dp))
                    Title(question.title)
                }
            }
            fields(asked, does)
            trouble?.let { item { Words(it, Role.STRONG, colour = colours.varnish) } }
        }
        OneKey(question.key, Modifier.padding(top = 8.dp, bottom = 22.dp)) { does { answer() } }
    }
}

/** Everything on a question that can be touched, a row each. */
internal fun LazyListScope.fields(asked: Asked, does: Does) {
    fun leads(then: Answers) = does { ask(asked.ask, then) }
    val alone = asked.screen.fields.size == 1
    items(asked.screen.fields) { Field(it, alone, ::leads) }
}

@Composable
private fun Field(field: QuestionField, alone: Boolean, leads: (Answers) -> Unit) {
    when (field) {
        is QuestionField.Stepper -> Stepper(field, leads)
        is QuestionField.Choices -> Choices(field, alone, leads)
        is QuestionField.Words -> Typed(field, leads)
    }
}

/** Less, the value, more: each key says below it where it leads. */
@Composable
private fun Stepper(field: QuestionField.Stepper, leads: (Answers) -> Unit) {
    // What is typed lies in the field until a step is taken.
    var typing by remember { mutableStateOf<String?>(null) }
    fun steps(then: Answers) {
        typing = null
        leads(then)
    }
    Column(Modifier.padding(top = 4.dp)) {
        Row(Modifier.fillMaxWidth(), verticalAlignment = Alignment.CenterVertically) {
            Words(field.label.capital(), Role.STRONG, Modifier.weight(1f))
            field.typed?.let { if (typing == null) Underlined(it.words) { typing = "" } }
        }
        Row(Modifier.fillMaxWidth().padding(top = 8.dp), verticalAlignment = Alignment.Top) {
            StepKey("−", field.label, field.less, ::steps)
            Row(Modifier.weight(1f).heightIn(min = 76.dp), Arrangement.Center, Alignment.CenterVertically) {
                val number = typing
                if (number == null)
                    FittedWords(field.value ?: "?", 60.dp, 34.dp, Modifier.weight(1f, fill = false))
                else
                    TypedNumber(number, field.label, Modifier.weight(1f)) {
                        typing = it
                        field.typed?.let { typed -> leads(typed.then.copy(typed = it)) }
                    }
                field.unit?.let { Words(it, Role.LEAD, Modifier.padding(start = 6.dp)) }
            }
            StepKey("+", field.label, field.more, ::steps)
        }
    }
}

/** A number in large digits, typed by the phone's keys for numbers. */
@Composable
private fun TypedNumber(text: String, label: String, modifier: Modifier, typed: (String) -> Unit) {
    val focus = remember { FocusRequester() }
    LaunchedEffect(Unit) { focus.requestFocus() }
    BasicTextField(
        text,
        typed,
        modifier
            .heightIn(min = 76.dp)
            .background(colours.raised, RoundedCornerShape(6.dp))
            .border(1.5.dp, colours.edge, RoundedCornerShape(6.dp))
            .padding(horizontal = 12.dp, vertical = 8.dp)
            .focusRequester(focus)
            .semantics { contentDescription = label },
        textStyle = style(34.sp, Role.TITLE.weight, colours.ink),
        singleLine = true,
        keyboardOptions = KeyboardOptions(keyboardType = KeyboardType.Decimal),
        cursorBrush = SolidColor(colours.ink),
    )
}

@Composable
private fun StepKey(sign: String, label: String, to: Choice?, leads: (Answers) -> Unit) {
    Column(Modifier.widthIn(min = 88.dp, max = 120.dp), horizontalAlignment = Alignment.CenterHorizontally) {
        val shape = RoundedCornerShape(6.dp)
        val shown = colours
        Box(
            Modifier.width(88.dp)
                .heightIn(min = 76.dp)
                .background(if (to == null) shown.ground else shown.raised, shape)
                .border(1.5.dp, if (to == null) shown.rule else shown.edge, shape)
                .touched(to != null) { to?.let { leads(it.then) } }
                .semantics { contentDescription = "$label: ${to?.words.orEmpty()}" },
            Alignment.Center,
        ) {
            Words(sign, Role.HOME, colour = if (to == null) shown.edge else shown.ink)
        }
        Words(to?.words.orEmpty(), Role.SMALL, colour = shown.soft, align = TextAlign.Center)
    }
}

@Composable
private fun Choices(field: QuestionField.Choices, alone: Boolean, leads: (Answers) -> Unit) {
    Column(verticalArrangement = Arrangement.spacedBy(8.dp)) {
        // Of large letters the one key says what is asked.
        val label = field.label.takeUnless { largeText && field.shape == ChoiceShape.NUMBERS && alone }
        label?.let { Words(it, Role.LEAD, Modifier.padding(top = 8.dp), weight = Role.TITLE.weight) }
        val across =
            when (field.shape) {
                ChoiceShape.ROWS -> 1
                // Large letters need the width.
                ChoiceShape.WORDS -> if (largeText) 2 else 3
                ChoiceShape.NUMBERS -> across(field.choices.size)
            }
        val (role, high) =
            when (field.shape) {
                ChoiceShape.ROWS -> Role.LEAD to 56.dp
                ChoiceShape.WORDS -> Role.STRONG to 56.dp
                ChoiceShape.NUMBERS -> Role.LEAD to 58.dp
            }
        for (row in field.choices.chunked(across)) {
            Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(8.dp)) {
                for (choice in row) {
                    val rows = field.shape == ChoiceShape.ROWS
                    ChoiceKey(
                        choice.words,
                        choice.more,
                        choice.chosen,
                        choice.care,
                        Modifier.weight(1f),
                        // A word among numbers stays in its key.
                        if (choice.words.length > 4 && field.shape == ChoiceShape.NUMBERS) Role.SMALL
                        else role,
                        high,
                        left = rows,
                    ) {
                        leads(choice.then)
                    }
                }
                repeat(across - row.size) { Spacer(Modifier.weight(1f)) }
            }
        }
        if (field.notes.isNotEmpty()) {
            Row(Modifier.fillMaxWidth()) {
                field.notes.forEachIndexed { at, note ->
                    Words(
                        note,
                        Role.SMALL,
                        Modifier.weight(1f),
                        colours.soft,
                        if (at == 0) TextAlign.Start else TextAlign.End,
                    )
                }
            }
        }
    }
}

/** How many numbers stand in a row: as few rows as there can be with keys that a thumb hits. */
private fun across(keys: Int): Int =
    when {
        keys > 12 -> 4
        keys > 10 -> 6
        keys > 6 -> 5
        else -> keys
    }

@Composable
private fun Typed(field: QuestionField.Words, leads: (Answers) -> Unit) {
    var text by remember { mutableStateOf(field.then.words.orEmpty()) }
    Column(Modifier.padding(top = 8.dp)) {
        Words(field.label, Role.STRONG)
        BasicTextField(
            text,
            {
                text = it
                leads(field.then.copy(words = it))
            },
            Modifier.fillMaxWidth()
                .padding(top = 8.dp)
                .heightIn(min = 96.dp)
                .background(colours.raised, RoundedCornerShape(6.dp))
                .border(1.5.dp, colours.edge, RoundedCornerShape(6.dp))
                .padding(12.dp)
                .semantics { contentDescription = field.label },
            textStyle = style(17.sp, Role.BODY.weight, colours.ink),
            cursorBrush = SolidColor(colours.ink),
        )
    }
}

/** The keys that do not fit beside the one key, a row each. */
@Composable
internal fun MoreKeys(screen: SessionScreen, modifier: Modifier, does: Does) {
    Column(modifier.padding(horizontal = 16.dp)) {
        Head(words.back, screen.here.title) { does { back() } }
        LazyColumn(Modifier.weight(1f).fillMaxWidth(), verticalArrangement = Arrangement.spacedBy(8.dp)) {
            items(besides(screen.here.sideKeys, screen.here.row)) { key ->
                Row(Modifier.fillMaxWidth()) {
                    SideKeyOf(key.words, hurts = key.kind == holdfast.core.SideKeyKind.HURTS) {
                        does { press(key) }
                    }
                }
            }
        }
    }
}

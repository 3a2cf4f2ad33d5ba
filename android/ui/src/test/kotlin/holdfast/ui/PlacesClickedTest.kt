package holdfast.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.toPixelMap
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertIsDisplayed
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.isFocused
import androidx.compose.ui.test.isRoot
import androidx.compose.ui.test.junit4.createComposeRule
import androidx.compose.ui.test.onAllNodesWithText
import androidx.compose.ui.test.onFirst
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performKeyInput
import androidx.compose.ui.test.pressKey
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import holdfast.core.Heard
import holdfast.core.Language
import holdfast.core.MassUnit
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.Role
import holdfast.core.StartAnswers
import holdfast.core.TextSize
import holdfast.core.speak
import holdfast.ui.theme.Colours
import java.io.File
import java.nio.file.Files
import kotlin.test.AfterTest
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertTrue
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.runBlocking
import org.junit.Rule
import org.junit.Test

/** Starting, joining, exchanging, looking back: by what a person sees and taps, on the real core. */
class PlacesClickedTest {
    @get:Rule val rule = createComposeRule()

    private val hand = Hand(rule)

    private fun tap(text: String) = hand.tap(text)

    private fun sees(text: String) = hand.sees(text)

    private fun there(text: String) = hand.there(text)

    private fun ground() = rule.onAllNodes(isRoot()).onFirst().captureToImage().toPixelMap()[2, 2]

    private fun node(text: String) =
        rule.onAllNodes(says(text), useUnmergedTree = true).onFirst().fetchSemanticsNode()

    private val folder = Files.createTempDirectory("places").toFile()
    private val hands = Hands(Stage.tuesday)
    private var shown by mutableStateOf<Entry?>(null)

    @AfterTest
    fun end() {
        speak(Language.EN)
        folder.deleteRecursively()
    }

    private fun phone(name: String, seed: Int) = TestPhone(File(folder, name), hands, seed)

    private fun types(label: String, text: String) = hand.types(label, text)

    private fun typed(label: String) = hand.typed(label)

    /** Somebody starts on their phone: who they are, how they read, what is stored. */
    private fun starts(phone: TestPhone, name: String, role: String): Entry {
        val entry = Entry(phone)
        runBlocking { entry.start() }
        shown = entry
        sees("Who are you?")
        types("Your name", name)
        tap(role)
        tap("Next")
        tap("Kilograms")
        tap("Next")
        sees("data about your health")
        tap("I have read it")
        rule.waitUntil(5_000) { entry.shell != null }
        return entry
    }

    @Test
    fun a_coach_and_an_athlete_start_pair_publish_and_exchange() {
        rule.setContent {
            Held { shown?.let { HoldfastEntry(it, dark = false, font = roboto, moves = false) } }
        }
        val files = File(folder, "boathouse").also { it.mkdirs() }
        val (coachPhone, phone) = phone("maren", 40) to phone("ines", 80)
        listOf(coachPhone, phone).forEach { it.folder = files }
        val plan = Stage.plan("small-plan.toml")

        val coach = starts(coachPhone, "Maren", "Coach")
        tap("Plan")
        coachPhone.file = ChosenFile("plan.toml", plan.replace("[block]", "[blok]").toByteArray())
        tap("Publish a plan")
        sees("plan.toml")
        assertNotNull(coach.shell!!.pages.trouble, "what is wrong with it is said")
        coachPhone.file = ChosenFile("plan.toml", plan.toByteArray())
        tap("Publish a plan")
        sees("Any evening")
        tap("Board")
        tap("Let somebody in")
        tap("Show a code")
        sees("It works once")
        val code = { entry: Entry -> entry.shell!!.pages.shown!!.code!!.text }
        phone.code = code(coach)

        val ines = starts(phone, "Ines", "Athlete")
        sees("You are in no crew yet")
        // From the day, too, that is the way on.
        tap("Today")
        tap("Join a crew")
        sees("You are in no crew yet")
        tap("Scan the code")
        sees("Show this to your coach")
        coachPhone.code = code(ines)
        shown = coach
        tap("scan their code")
        sees("Ines reads you four words")
        phone.code = code(coach)
        shown = ines
        tap("scan their code")
        sees("Read these words")
        val words = ines.shell!!.pages.shown!!.words.joinToString(" ").replaceFirstChar { it.uppercase() }
        shown = coach
        tap(words)
        sees("Ines is in your crew")
        tap("Go to the exchange")
        tap("Add a folder")
        tap("Exchange now")
        sees("All is sent")
        shown = ines
        tap("The words match")
        sees("You have joined")
        tap("Go to the exchange")
        tap("Add a folder")
        // No connection: said, and nothing is lost.
        phone.full = true
        tap("Exchange now")
        sees("No connection to boathouse")
        phone.full = false
        tap("Exchange now")
        sees("All is sent")
        rule.runOnIdle { while (ines.back()) Unit }
        tap("Begin Any evening")
        sees("set 1 of 3")
        assertEquals(Place.SESSION, ines.shell!!.place)
        // A killed process comes back to it.
        val again = Entry(TestPhone(File(folder, "ines"), hands))
        runBlocking {
            // One process holds a home.
            ines.closed()
            again.start()
        }
        shown = again
        sees("set 1 of 3")
        runBlocking {
            again.closed()
            coach.closed()
        }
    }

    private suspend fun Entry.closed() = assertNotNull(shell).close()

    /** Whoever left their name out is asked for it, and what they had chosen stands. */
    @Test
    fun a_name_that_is_missing_is_asked_for() {
        rule.setContent {
            Held { shown?.let { HoldfastEntry(it, dark = true, font = roboto, moves = false) } }
        }
        val entry = Entry(phone("nobody", 7))
        runBlocking { entry.start() }
        shown = entry
        tap("Athlete")
        tap("Next")
        sees("Your name is missing")
        types("Your name", "Ana")
        tap("Next")
        sees("Units and language")
        tap("Deutsch")
        sees("Gewichte und Sprache")
        tap("Wie das Telefon")
        sees("Units and language")
        tap("Deutsch")
        sees("Gewichte und Sprache")
        tap("Kilogramm")
        tap("Weiter")
        sees("Bevor du anfängst")
        rule.runOnIdle { assertTrue(entry.back()) }
        sees("Gewichte und Sprache")
        // What was answered stands on every page on the way back.
        rule.runOnIdle { assertTrue(entry.back()) }
        sees("Wer bist du?")
        sees("Ana")
        rule.runOnIdle { assertTrue(!entry.back(), "the first") }
    }

    /** What cannot be undone is agreed to once all of it was in view, however large the text. */
    @Test
    fun nobody_agrees_to_what_was_not_in_view() {
        val entry = Entry(phone("ana", 9))
        val answers = StartAnswers(2u, Role.ATHLETE, "Ana", MassUnit.KG, null)
        runBlocking {
            entry.start()
            entry.does(PageAct.Answer(answers), listOf("Ana"))
        }
        rule.setContent {
            CompositionLocalProvider(LocalDensity provides Density(LocalDensity.current.density, 2f)) {
                Held { HoldfastEntry(entry, dark = false, font = roboto, moves = false) }
            }
        }
        var turned = 0
        while (there("I have read it").isEmpty()) {
            val node = rule.onAllNodes(hasText("Read on") and hasClickAction()).onFirst()
            node.performClick()
            rule.waitForIdle()
            turned += 1
            assertTrue(turned < 20, "no end")
        }
        assertTrue(turned >= 2, "$turned: it does not fit one screen")
        assertTrue(there("pregnancy").isNotEmpty(), "the last caution is in view")
    }

    /** What was lifted is found again, and its chart is read aloud. */
    @Test
    fun a_movement_is_looked_up() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking {
                for (reps in listOf(6u, 7u)) {
                    stage.shell.press()
                    stage.asPlanned(reps)
                    stage.hands.pass(Stage.week)
                    stage.shell.start()
                }
                stage.shell.open(PageAsk.History(null))
            }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            tap("Back squat")
            sees("estimated one-rep max")
            val chart = stage.shell.pages.shown!!.chart!!.said
            rule.onAllNodes(hasContentDescription(chart)).onFirst().assertIsDisplayed()
            tap("History")
            tap("Today")
            tap("This phone")
            tap("Largest")
            rule.waitUntil(5_000) { stage.phone.choices().text == TextSize.LARGEST }
            val letters = node("Back to today").size.height
            tap("Larger")
            rule.waitUntil(5_000) { stage.phone.choices().text == TextSize.LARGER }
            rule.waitForIdle()
            assertTrue(letters > node("Back to today").size.height, "the text was larger")
            assertEquals(Colours.light.ground, ground())
            tap("Dark")
            rule.waitUntil(5_000) { ground() == Colours.dark.ground }
            tap("Tone alone")
            tap("Give a cue now")
            rule.waitUntil(5_000) { stage.phone.tried == 1 }
            assertEquals(Heard.TONES, stage.phone.choices().heard)
            tap("Pounds")
            rule.waitUntil(5_000) { runBlocking { stage.ines.ask { who() } }.unit == MassUnit.LB }
            tap("Deutsch")
            sees("Dieses Telefon")
            tap("Zurück zu Heute")
            sees("Verlauf")
        }
    }

    /** An exchange that takes its time goes on when its page is left, and home shows what came of it. */
    @Test
    fun an_exchange_goes_on_when_its_page_is_left() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            stage.phone.folder = stage.files
            runBlocking {
                stage.trained()
                stage.shell.does(PageAct.KeepFolder, emptyList())
            }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            sees("are waiting")
            tap("Exchange")
            val gate = CompletableDeferred<Unit>()
            stage.phone.waits = gate
            tap("Exchange now")
            rule.waitUntil(5_000) { stage.shell.pages.busy }
            tap("Today")
            sees("are waiting")
            gate.complete(Unit)
            sees("All is sent")
        }
    }

    /** A set of last week was heavier than it was logged: it is corrected by touch, and its page says so. */
    @Test
    fun a_set_of_an_earlier_day_is_corrected() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking {
                stage.trained()
                stage.shell.open(PageAsk.History(null))
            }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            tap("RPE 7")
            sees("Touch a set to correct it.")
            tap("55 kg × 6")
            sees("Change what is wrong")
            tap("Type it")
            types("Load, in steps the room can build", "57.5")
            tap("Save 57.5 kg × 6")
            sees("57.5 kg × 6, 2 left")
            sees("Touch a set to correct it.")
            tap("60 kg × 5")
            tap("I did not do this set")
            stage.hands.pass(5_000)
            tap("Take back 60 kg × 5")
            sees("57.5 kg × 6")
            assertTrue(there("60 kg").isEmpty(), "it is gone")
        }
    }

    /**
     * Another kind of server keeps the address and asks anew for the rest: no password stands in the open.
     */
    @Test
    fun a_server_of_the_other_kind_is_kept() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            runBlocking { stage.shell.open(PageAsk.Exchange(emptyList())) }
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            tap("Add a server")
            sees("made for this app alone")
            types("Address", "https://nas.example.org:9000")
            types("Password", "meant for the other kind")
            tap("S3-compatible storage")
            sees("key made for this app alone")
            sees("Bucket")
            assertEquals("https://nas.example.org:9000", typed("Address"))
            assertEquals("", typed("Bucket"))
            assertEquals("us-east-1", typed("Region"))
            types("Bucket", "cellar")
            types("Key id", "KEY")
            types("Secret key", "Tr0mb0ne")
            tap("Save this server")
            sees("What carries it")
            val kept = stage.phone.server as Server.S3
            assertEquals("https://nas.example.org:9000", kept.address)
            assertEquals(Bucket("cellar", "us-east-1", "", "KEY"), kept.bucket)
            assertEquals("Tr0mb0ne", kept.secret)
            assertTrue("Tr0mb0ne" !in kept.toString())
            // It stands among the carriers, as an address is written.
            sees("https://nas.example.org:9000")
        }
    }

    /** Where there is room home and what is open stand side by side. */
    @Test
    fun a_wide_window_has_two_panes() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            rule.setContent {
                Box(Modifier.size(1180.dp, 820.dp)) {
                    HoldfastApp(stage.shell, dark = false, font = roboto, moves = false)
                }
            }
            sees("Any evening")
            tap("This phone")
            sees("Kilograms")
            rule.onAllNodesWithText("Begin Any evening", substring = true).onFirst().assertIsDisplayed()
        }
    }

    /** With a keyboard alone: to the key by Tab, and begun by Enter. */
    @OptIn(ExperimentalTestApi::class)
    @Test
    fun a_keyboard_reaches_every_touch() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            rule.setContent { Held { HoldfastApp(stage.shell, dark = false, font = roboto, moves = false) } }
            sees("Begin Any evening")
            val touches = rule.onAllNodes(hasClickAction()).fetchSemanticsNodes().size
            val reached = mutableSetOf<String>()
            repeat(touches) {
                rule.onRoot().performKeyInput { pressKey(Key.Tab) }
                rule.waitForIdle()
                val node = rule.onAllNodes(isFocused() and hasClickAction()).fetchSemanticsNodes().single()
                reached += node.config[SemanticsProperties.Text].first().text
            }
            assertEquals(touches, reached.size, "$reached")
            while (
                rule.onAllNodes(isFocused() and says("Begin Any evening")).fetchSemanticsNodes().isEmpty()
            ) rule.onRoot().performKeyInput { pressKey(Key.Tab) }
            rule.onRoot().performKeyInput { pressKey(Key.Enter) }
            sees("set 1 of 3")
        }
    }
}

package holdfast.ui

import androidx.compose.ui.test.junit4.createComposeRule
import holdfast.core.PageAct
import holdfast.core.RecoveryDid
import holdfast.core.Restore
import holdfast.kit.Carrier
import holdfast.kit.Host
import java.io.File
import java.nio.file.Files
import kotlin.test.AfterTest
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.yield
import org.junit.Rule
import org.junit.Test

/** Whoever lost their phone types the code from the paper on another: by what they see and tap. */
class BringBackClickedTest {
    @get:Rule val rule = createComposeRule()

    private val hand = Hand(rule)
    private val folder = Files.createTempDirectory("found").toFile()
    private val home = File(folder, "home")
    private val empty = File(folder, "Another crew").also { it.mkdirs() }

    @AfterTest
    fun end() {
        folder.deleteRecursively()
    }

    private fun tap(text: String) = hand.tap(text)

    private fun sees(text: String) = hand.sees(text)

    /** Ines trained and exchanged, and has the code on paper. */
    private fun code(stage: Stage): String = runBlocking {
        stage.trained()
        stage.ines.exchange(FolderCarrier(stage.files))
        stage.ines.ask { now -> recovery(RecoveryDid.Show, now) }.code!!
    }

    /** A new phone, on which they say that they have a code. */
    private fun starts(phone: Phone, name: String = ""): Entry {
        val entry = Entry(phone)
        runBlocking { entry.start() }
        rule.setContent { Held { HoldfastEntry(entry, dark = false, font = roboto, moves = false) } }
        hand.types("Your name", name)
        tap("I have a recovery code")
        return entry
    }

    private fun adds(phone: TestPhone, carrier: File) {
        phone.folder = carrier
        tap("Add a folder")
        sees(carrier.name)
    }

    private fun agrees() {
        sees("Your log was found")
        while (hand.there("I agree: bring it back").isEmpty()) tap("Read on")
        assertFalse(home.exists(), "nothing is written before the last key")
        tap("I agree: bring it back")
    }

    private fun seesTheLog() {
        tap("Today")
        tap("History")
        sees("Back squat")
        sees("60 kg × 5")
    }

    @Test
    fun a_log_comes_back_on_a_new_phone() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = code(stage)
            val phone = TestPhone(home, stage.hands, 77)
            val entry = starts(phone)
            sees("Add a folder or a server first")
            adds(phone, empty)
            sees("Fill in every field first")
            hand.types("Recovery code", code.dropLast(1))
            tap("Look for the log")
            sees("A recovery code has 32 letters and digits; these are 31.")
            assertEquals(code.dropLast(1), hand.typed("Recovery code"), "what was typed stays")
            hand.replaces("Recovery code", code.lowercase().replace("-", " "))
            phone.full = true
            tap("Look for the log")
            sees("No connection to ${empty.name}")
            phone.full = false
            tap("Look for the log")
            sees("Nothing on this carrier opens with this code")
            assertEquals(code.lowercase().replace("-", " "), hand.typed("Recovery code"))
            adds(phone, stage.files)
            tap("Look for the log")
            sees("Found Ines's log, written on one device.")
            // What was found can be left, and is found again.
            tap("Back")
            sees("Bring a log back")
            tap("Look for the log")
            agrees()
            sees("Exchange now")
            seesTheLog()
            assertEquals(
                listOf(empty, stage.files).map { it.path },
                runBlocking { phone.carriers() }.map { it.id },
            )
            entry.shell!!.close()
        }
    }

    /** A folder that cannot be reached keeps the log from nobody: it is told once all others were asked. */
    @Test
    fun a_carrier_out_of_reach_hides_no_other() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = code(stage)
            val phone = TestPhone(home, stage.hands, 77)
            val entry = starts(phone)
            phone.away = empty
            adds(phone, empty)
            adds(phone, stage.files)
            hand.types("Recovery code", code)
            tap("Look for the log")
            agrees()
            sees("No connection to ${empty.name}")
            seesTheLog()
            entry.shell!!.close()
        }
    }

    /** The exchange that brings the log is seen while it runs, and what it brings comes in any place. */
    @Test
    fun the_app_opens_before_the_log_is_there() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = code(stage)
            val phone = TestPhone(home, stage.hands, 77)
            val entry = starts(phone)
            adds(phone, stage.files)
            hand.types("Recovery code", code)
            tap("Look for the log")
            val gate = CompletableDeferred<Unit>()
            sees("Your log was found")
            phone.waits = gate
            agrees()
            sees("Exchange now")
            tap("Today")
            gate.complete(Unit)
            rule.waitUntil(5_000) { !entry.shell!!.pages.busy }
            tap("History")
            sees("60 kg × 5")
            entry.shell!!.close()
        }
    }

    /** A search that takes too long is left: it comes to nothing, and another begins at once. */
    @Test
    fun a_search_is_left_on_the_way() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = code(stage)
            val gate = CompletableDeferred<Unit>()
            var ended = false
            val phone = TestPhone(home, stage.hands, 77)
            val slow =
                object : Phone by phone {
                    override suspend fun reach(carrier: KeptCarrier): Carrier =
                        try {
                            gate.await()
                            phone.reach(carrier)
                        } finally {
                            ended = true
                        }
                }
            val entry = starts(slow, "Ines")
            adds(phone, stage.files)
            hand.types("Recovery code", code)
            tap("Look for the log")
            rule.waitUntil(5_000) { entry.busy }
            tap("Back")
            sees("Who are you?")
            rule.waitUntil(5_000) { ended }
            assertEquals("Ines", hand.typed("Your name"), "what was typed stays")
            gate.complete(Unit)
            rule.waitForIdle()
            sees("Who are you?")
            tap("I have a recovery code")
            sees(stage.files.name)
            hand.types("Recovery code", code)
            tap("Look for the log")
            sees("Your log was found")
            assertFalse(home.exists(), "nothing is written by a search")
        }
    }

    /** Once a search that was left has ended, somebody stays where they went. */
    @Test
    fun a_search_that_was_left_pulls_nobody_back() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val phone = TestPhone(home, stage.hands, 77).also { it.folder = stage.files }
            val entry = Entry(phone)
            entry.start()
            entry.does(PageAct.BringBack, listOf("Ines"))
            val code = stage.ines.ask { now -> recovery(RecoveryDid.Show, now) }.code!!
            entry.does(PageAct.KeepFolder, listOf(code))
            phone.waits = CompletableDeferred()
            val search = launch { entry.does(PageAct.Search, listOf(code)) }
            while (!entry.busy) yield()
            entry.back()
            search.join()
            assertEquals("Who are you?", entry.first!!.title)
        }
    }

    /** While a home is made nobody goes back: it is theirs, or it is not. */
    @Test
    fun a_home_that_is_made_is_not_left() {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = code(stage)
            val gate = CompletableDeferred<Unit>()
            val phone = TestPhone(home, stage.hands, 77)
            val slow =
                object : Phone by phone {
                    override suspend fun restore(found: Restore): Host {
                        gate.await()
                        return phone.restore(found)
                    }
                }
            val entry = starts(slow)
            adds(phone, stage.files)
            hand.types("Recovery code", code)
            tap("Look for the log")
            agrees()
            rule.waitUntil(5_000) { entry.busy }
            tap("Back")
            gate.complete(Unit)
            seesTheLog()
            entry.shell!!.close()
        }
    }
}

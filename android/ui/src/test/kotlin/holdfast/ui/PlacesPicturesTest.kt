package holdfast.ui

import holdfast.core.Language
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.Place
import holdfast.core.RecoveryDid
import holdfast.core.Role
import holdfast.core.ServerKind
import holdfast.core.StartAnswers
import holdfast.core.Tap
import java.io.File
import java.nio.file.Files
import kotlinx.coroutines.runBlocking
import org.junit.Test

/** The places beside a session, drawn into the build folder: to be looked at. */
class PlacesPicturesTest {
    private fun of(shell: Shell, name: String, look: Look = Look()) = everywhere(shell, name, look)

    @Test
    fun an_athletes_places() = runBlocking {
        val plan = Stage.plan("small-plan.toml").replace("weeks = 2", "weeks = 12")
        Stage(plan).use { stage ->
            val shell = stage.shell
            for (reps in listOf(5u, 8u, 6u, 9u, 4u, 7u)) {
                shell.press()
                stage.asPlanned(reps)
                stage.hands.pass(Stage.week)
                shell.start()
            }
            shell.press()
            stage.asPlanned(6u)
            of(shell, "finished")
            stage.hands.pass(Stage.week)
            shell.start()
            stage.reads()
            shell.start()
            of(shell, "today-places")
            of(shell, "today-places-large-text", Look(text = 2f))
            shell.open(PageAsk.History(null))
            of(shell, "history")
            of(shell, "history-wide", Look(wide = 1180, high = 820))
            shell.pages.open(PageAsk.Movement(null, "Back squat"))
            of(shell, "movement")
            of(shell, "movement-dark", Look(dark = true))
            of(shell, "movement-large-text", Look(text = 2f))
            of(shell, "movement-narrow", Look(wide = 320, high = 640))
            spoken(Language.DE) {
                runBlocking { shell.pages.look() }
                of(shell, "movement-german")
            }
            shell.back()
            shell.pages.open(PageAsk.Range(null, 0u))
            of(shell, "range")
            shell.back()
            val opens = shell.pages.shown!!.rows.mapNotNull { (it.does as? PageAct.Open)?.page }
            val done = opens.filterIsInstance<PageAsk.Session>()
            shell.pages.open(done.first())
            of(shell, "session-read")
            shell.back()
            shell.pages.open(done.last())
            of(shell, "session-done")
            shell.does(shell.pages.shown!!.rows[1].does!!, emptyList())
            of(shell, "set-corrected")
            shell.back()
            stage.phone.folder = File(stage.files.path)
            shell.open(PageAsk.Exchange(emptyList()))
            of(shell, "exchange-no-carrier")
            shell.does(PageAct.KeepFolder, emptyList())
            of(shell, "exchange-waiting")
            of(shell, "exchange-waiting-large-text", Look(text = 2f))
            stage.phone.full = true
            shell.does(PageAct.Exchange, emptyList())
            of(shell, "exchange-failed")
            stage.phone.full = false
            shell.does(PageAct.Exchange, emptyList())
            of(shell, "exchange-sent")
            shell.pages.open(PageAsk.Server(ServerKind.WEB_DAV, ""))
            of(shell, "server")
            shell.does(PageAct.ServerKind(ServerKind.S3), listOf("https://nas.example.org:9000", "", ""))
            of(shell, "server-s3")
            of(shell, "server-s3-dark", Look(dark = true))
            of(shell, "server-s3-large-text", Look(text = 2f))
            spoken(Language.DE) {
                runBlocking { shell.pages.look() }
                of(shell, "server-s3-german")
            }
            for ((name, ask) in
                listOf(
                    "this-phone" to PageAsk.ThisPhone(shell.pages.choices),
                    "crew" to PageAsk.Crew,
                    "room" to PageAsk.Kit,
                    "recovery" to PageAsk.Recovery(shown = true),
                    "cautions" to PageAsk.Cautions,
                    "stored" to PageAsk.Stored,
                )) {
                shell.open(ask)
                of(shell, name)
            }
        }
    }

    @Test
    fun a_coachs_places() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            stage.trained()
            stage.shell.press()
            stage.ines.tap(Tap.Flag("Squat", null, Place.KNEE, 5u, emptyList()), null)
            stage.phone.folder = stage.files
            stage.coachPhone.folder = stage.files
            for (shell in listOf(stage.shell, stage.coachShell)) {
                shell.start()
                shell.does(PageAct.KeepFolder, emptyList())
                shell.open(PageAsk.Exchange(emptyList()))
                shell.does(PageAct.Exchange, emptyList())
            }
            val coach = stage.coachShell
            coach.start()
            of(coach, "board")
            of(coach, "board-dark", Look(dark = true))
            coach.pages.open(PageAsk.History("Ines"))
            of(coach, "member-wide", Look(wide = 1180, high = 820))
            coach.back()
            coach.pages.open(PageAsk.Plan)
            of(coach, "plan")
            coach.back()
            coach.pages.open(PageAsk.Pairing)
            coach.does(PageAct.Invite, emptyList())
            of(coach, "pairing-code")
            of(coach, "pairing-code-dark", Look(dark = true))
            val eva = TestPhone(File(Files.createTempDirectory("eva").toFile(), "home"), stage.hands, 150)
            val host =
                eva.start(holdfast.core.Start(Role.ATHLETE, "Eva", holdfast.core.MassUnit.KG, eva.chance(96)))
            host.use {
                val member = Shell(host, eva)
                member.start()
                of(member, "nothing-yet")
                member.open(PageAsk.Pairing)
                of(member, "pairing-join")
                eva.code = coach.pages.shown!!.code!!.text
                member.does(PageAct.Scan, emptyList())
                stage.coachPhone.code = member.pages.shown!!.code!!.text
                coach.does(PageAct.Scan, emptyList())
                of(coach, "pairing-pick")
                eva.code = coach.pages.shown!!.code!!.text
                member.does(PageAct.Scan, emptyList())
                of(member, "pairing-compare")
                of(member, "pairing-compare-large-text", Look(text = 2f))
            }
        }
    }

    @Test
    fun the_first_start() = runBlocking {
        val home = File(Files.createTempDirectory("first").toFile(), "home")
        val entry = Entry(TestPhone(home, Hands(Stage.tuesday)))
        fun picture(name: String, look: Look = Look()) {
            picture(name, look) { HoldfastEntry(entry, look.dark, roboto, moves = false) }
        }
        entry.start()
        picture("start-who")
        val answers = StartAnswers(0u, Role.ATHLETE, "Ines", null, null)
        entry.does(PageAct.Answer(answers.copy(step = 1u)), listOf("Ines"))
        picture("start-how")
        entry.does(PageAct.Answer(answers.copy(step = 2u, unit = holdfast.core.MassUnit.KG)), emptyList())
        picture("start-stored")
        picture("start-stored-large-text", Look(text = 2f))
    }

    @Test
    fun a_log_that_comes_back() = runBlocking {
        Stage(Stage.plan("small-plan.toml")).use { stage ->
            val code = stage.ines.ask { now -> recovery(RecoveryDid.Show, now) }.code!!
            val phone = TestPhone(File(Files.createTempDirectory("found").toFile(), "home"), stage.hands, 77)
            val entry = Entry(phone)
            fun picture(name: String, look: Look = Look()) {
                picture(name, look) { HoldfastEntry(entry, look.dark, roboto, moves = false) }
            }
            entry.start()
            entry.does(PageAct.BringBack, listOf(""))
            picture("bring-back")
            phone.folder = stage.files
            entry.does(PageAct.KeepFolder, listOf(code.dropLast(1)))
            entry.does(PageAct.Search, listOf(code.dropLast(1)))
            picture("bring-back-wrong-code")
            picture("bring-back-wrong-code-large-text", Look(text = 2f))
            entry.does(PageAct.Search, listOf(code))
            picture("bring-back-found")
            picture("bring-back-found-dark", Look(dark = true))
            spoken(Language.DE) {
                runBlocking {
                    entry.back()
                    // A chooser that was closed: the page is drawn again.
                    phone.folder = null
                    entry.does(PageAct.KeepFolder, listOf(code))
                }
                picture("bring-back-german")
            }
        }
    }
}

package holdfast.kit

import holdfast.core.Act
import holdfast.core.Answer
import holdfast.core.Decision
import holdfast.core.MassUnit
import holdfast.core.MaxGiven
import holdfast.core.MeasuredWhen
import holdfast.core.NoteGiven
import holdfast.core.Place
import holdfast.core.Role
import holdfast.core.SetNamed
import holdfast.core.SetOfPiece
import holdfast.core.SideReading
import holdfast.core.Tap
import java.nio.file.Path
import java.time.LocalDate
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.time.Duration.Companion.seconds
import kotlinx.serialization.json.JsonElement
import org.junit.jupiter.api.io.TempDir

/** The whole loop as `tests/tests/screens.rs` plays it: every screen is the one Rust saw. */
class ScreensTest {
    private fun clock(piece: String) = Tap.Clock(piece, Act.BEGIN, null)

    private fun range(at: MeasuredWhen, tenths: Long) =
        Tap.LogRange("Calves", at, listOf(SideReading(1u, tenths)))

    private fun option(option: String?) = Tap.TakeOption("Squat", null, option)

    private fun flag(severity: UInt) = Tap.Flag("Squat", null, Place.KNEE, severity, listOf())

    @Test
    fun `screens are the same in every language`(@TempDir homes: Path) {
        val carrier = MemoryCarrier()
        val coach = Player.start(homes, Role.COACH, "Märta", MassUnit.KG, 0)
        val zoe = Player.start(homes, Role.ATHLETE, "Zoë", MassUnit.KG, 60)
        val jun = Player.start(homes, Role.ATHLETE, "Łucja 純", MassUnit.LB, 120)
        val seen = mutableListOf<JsonElement>()
        fun see(shown: Any) = seen.add(dump(shown))

        see(coach.core.publish("small-plan.toml", Fixtures.plan(), coach.now))
        for ((chance, player) in listOf(1 to zoe, 2 to jun)) {
            pair(coach.core, player.core, coach.now, chance).forEach { see(it) }
        }
        for (player in listOf(coach, zoe, jun)) {
            see(player.exchange(carrier))
            see(player.core.who())
        }

        zoe.goTo("2026-11-03")
        see(zoe.today())
        see(zoe.tap(Tap.Begin(null)))
        see(zoe.tap(squat(kilograms(50))))
        see(zoe.tap(option("box-squat")))
        see(zoe.tap(option(null)))
        for (bar in listOf("pound bar", "long bar")) see(zoe.tap(Tap.TakeBar("Squat", bar)))
        see(zoe.tap(squat(kilograms(60), 6u)))
        see(zoe.tap(squat(kilograms(70), 8u)))
        see(zoe.tap(Tap.Note(null, "Griff rutschte", false)))
        see(zoe.tap(Tap.Note(null, "schlief schlecht", true)))
        see(zoe.tap(clock("Corners")))
        zoe.pass(53_000)
        see(zoe.tap(window()))
        zoe.pass(60_000)
        see(zoe.tap(window(spare = 4.seconds)))
        see(zoe.tap(range(MeasuredWhen.BEFORE, 100)))
        see(zoe.tap(clock("Calves")))
        zoe.pass(135_000)
        see(zoe.today())
        zoe.pass(60_000)
        see(zoe.tap(Tap.LogHold("Calves", listOf(), null)))
        see(zoe.tap(range(MeasuredWhen.AFTER, 130)))
        see(zoe.tap(flag(6u)))
        see(zoe.tap(Tap.Undo))
        see(zoe.tap(flag(4u)))
        see(zoe.tap(Tap.Finish(7u, 60u)))

        jun.goTo("2026-11-03")
        see(jun.tap(Tap.Begin(null)))
        for ((load, reps) in listOf(95L to 8u, 115L to 6u, 135L to 3u)) {
            see(jun.tap(squat(pounds(load), reps)))
        }
        see(jun.tap(Tap.Finish(null, null)))

        val date = "2026-11-04"
        coach.goTo(date)
        for (player in listOf(zoe, jun, coach)) see(player.exchange(carrier))
        see(coach.core.board(LocalDate.parse(date)))
        val jun2 = coach.core.member("łucja 純", LocalDate.parse(date))
        val asked = jun2.proposals[0]
        see(jun2)
        val answer =
            Answer(
                person = jun2.person,
                exercise = asked.exercise,
                track = asked.track,
                decision = Decision.ACCEPT,
                loads = listOf(),
                words = "Gut so – weiter!",
            )
        coach.core.answer(answer, coach.now)
        val page = coach.core.member("Zoë", LocalDate.parse(date))
        see(page)
        val note =
            NoteGiven(
                member = "Zoë",
                on = LocalDate.parse("2026-11-03"),
                set = SetOfPiece("Squat", 3u),
                session = null,
                words = "Kreide 純",
                private = false,
            )
        see(coach.core.note(note, coach.now))
        coach.core.clearFlag(page.person, page.discomfort[0].flag, coach.now)
        for (player in listOf(coach, zoe, jun)) see(player.exchange(carrier))
        zoe.goTo("2026-11-05")
        see(zoe.today())
        jun.goTo(date)
        see(jun.core.preview(LocalDate.parse("2026-11-05"), null, jun.now))

        val listed = zoe.core.sets(null, null, 1u)
        val last = listed.sessions[0].sets[2].lift
        see(listed)
        val correction = zoe.core.readCorrection("80 x 5, 1 left")
        see(zoe.core.correct(last, correction, zoe.now)!!)
        val tested = MaxGiven(null, "Back squat", kilograms(90), false)
        see(zoe.core.giveMax(tested, zoe.now)!!)
        for (player in listOf(zoe, coach)) see(player.exchange(carrier))
        val named = SetNamed("Zoë", LocalDate.parse("2026-11-03"), "Squat", 1u, null)
        val first = coach.core.findSet(named)
        see(first)
        see(coach.core.setAside(first.lift, true, coach.now)!!)
        see(coach.core.member("Zoë", LocalDate.parse(date)))
        for (player in listOf(coach, zoe)) see(player.exchange(carrier))
        see(zoe.today())
        see(coach.core.export())

        val wanted = Fixtures.screens()
        assertEquals(wanted.size, seen.size)
        wanted.zip(seen).forEachIndexed { step, (rust, kotlin) ->
            assertEquals(rust, kotlin, "what step $step shows")
        }
    }
}

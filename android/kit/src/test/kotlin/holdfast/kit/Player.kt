package holdfast.kit

import holdfast.core.ExchangeReport
import holdfast.core.Holdfast
import holdfast.core.Instant
import holdfast.core.Mass
import holdfast.core.MassUnit
import holdfast.core.PairDid
import holdfast.core.PairScreen
import holdfast.core.Role
import holdfast.core.SessionScreen
import holdfast.core.Start
import holdfast.core.Tap
import java.nio.file.Path
import java.time.LocalDate
import java.time.ZoneOffset
import kotlin.time.Duration
import kotlinx.coroutines.runBlocking

/** Six in the evening of a date, on a boot clock that runs with it. */
fun evening(date: String): Instant {
    val ms = LocalDate.parse(date).atTime(18, 0).toInstant(ZoneOffset.UTC).toEpochMilli()
    return Instant(wallMs = ms, offsetMin = 0, bootMs = ms, bootId = "test")
}

fun kilograms(kg: Long) = Mass(kg * 100_000_000_000)

fun pounds(lb: Long) = Mass(lb * 45_359_237_000)

fun start(role: Role, name: String, unit: MassUnit = MassUnit.KG, chance: Int = 0) =
    Start(role, name, unit, ByteArray(80) { (chance + it).toByte() })

fun squat(load: Mass? = null, reps: UInt? = null, set: UInt? = null): Tap =
    Tap.LogSet(piece = "Squat", set = set, load = load, reps = reps, reserve = null)

fun window(window: UInt? = null, reps: UInt? = null, spare: Duration? = null): Tap =
    Tap.LogWindow("Corners", window, reps, spare)

/** Pairs a member's device with the coach's, and gives the screens that both see, in turn. */
fun pair(coach: Holdfast, member: Holdfast, now: Instant, chance: Int): List<PairScreen> {
    fun scan(shown: PairScreen) = PairDid.Scan(shown.code.orEmpty(), ByteArray(32) { chance.toByte() })
    val invited = coach.pair(PairDid.Invite(ByteArray(32) { (chance + it).toByte() }), now)
    val answered = member.pair(scan(invited), now)
    val opened = coach.pair(scan(answered), now)
    val compared = member.pair(scan(opened), now)
    val line = opened.lines.indexOf(compared.words.joinToString(" ")) + 1
    val picked = coach.pair(PairDid.Pick(line.toUInt(), null), now)
    val matched = member.pair(PairDid.Match(matches = true, shareEarlier = true), now)
    return listOf(invited, answered, opened, compared, picked, matched)
}

/** Somebody with a device and a clock that a test sets. */
class Player(val core: Holdfast, var now: Instant) {
    fun goTo(date: String) {
        now = evening(date)
    }

    fun pass(ms: Long) {
        now = now.copy(wallMs = now.wallMs + ms, bootMs = now.bootMs + ms)
    }

    fun tap(tap: Tap): SessionScreen {
        pass(1_000)
        return core.tap(tap, null, now)
    }

    fun today(): SessionScreen = core.today(now)

    fun exchange(carrier: Carrier): ExchangeReport = runBlocking {
        carrier.exchange { did -> core.exchange(did, now) }
    }

    companion object {
        fun start(homes: Path, role: Role, name: String, unit: MassUnit, chance: Int): Player {
            val now = evening("2026-11-02")
            val home = homes.resolve(name).toString()
            return Player(Holdfast.start(home, start(role, name, unit, chance), now, null), now)
        }
    }
}

/** A coach who has published the small plan, and an athlete who has it and has begun a session. */
fun crew(homes: Path): Pair<Player, Player> {
    val carrier = MemoryCarrier()
    val coach = Player.start(homes, Role.COACH, "Märta", MassUnit.KG, 0)
    val zoe = Player.start(homes, Role.ATHLETE, "Zoë", MassUnit.KG, 60)
    coach.core.publish("small-plan.toml", Fixtures.plan(), coach.now)
    pair(coach.core, zoe.core, coach.now, 1)
    coach.exchange(carrier)
    zoe.exchange(carrier)
    zoe.goTo("2026-11-03")
    zoe.tap(Tap.Begin(null))
    return coach to zoe
}

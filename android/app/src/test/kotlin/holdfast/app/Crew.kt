package holdfast.app

import holdfast.core.Act
import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.ListedFile
import holdfast.core.MassUnit
import holdfast.core.PairDid
import holdfast.core.Role
import holdfast.core.SessionScreen
import holdfast.core.Start
import holdfast.core.Tap
import holdfast.kit.Carrier
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import java.io.File
import java.time.DayOfWeek
import java.time.LocalDate
import java.time.temporal.TemporalAdjusters

/** Files in memory that carry between two devices. */
internal class Shelf : Carrier {
    val files = sortedMapOf<String, ByteArray>()
    var beforeGet: () -> Unit = {}

    override suspend fun list() = files.map { (name, content) -> ListedFile(name, content.size.toULong()) }

    override suspend fun get(names: List<String>): ExchangeDid.Got {
        beforeGet()
        return ExchangeDid.Got(
            names.mapNotNull { name -> files[name]?.let { CarriedFile(name, it) } },
            emptyList(),
        )
    }

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put {
        val new = files.count { it.name !in this.files }
        files.forEach { this.files[it.name] = it.content }
        return ExchangeDid.Put(new.toUInt(), emptyList())
    }
}

/**
 * A coach beside the athlete whose phone the test is about: they paired, and this week's plan has arrived.
 */
internal class Crew(val athlete: Host, clock: DeviceClock) : AutoCloseable {
    val shelf = Shelf()
    val coach: Host = soon {
        Host.start(File(folder("coach"), "home").path, start("Maren", Role.COACH, 200), clock)
    }

    init {
        soon {
            coach.ask { now -> publish("plan.toml", plan().toByteArray(), now) }
            suspend fun Host.does(did: PairDid) = ask { now -> pair(did, now) }
            val chance = ByteArray(64) { (it * 5 + 1).toByte() }
            val shown = coach.does(PairDid.Invite(chance))
            val answer = athlete.does(PairDid.Scan(shown.code!!, chance.reversedArray()))
            val opened = coach.does(PairDid.Scan(answer.code!!, chance))
            val compared = athlete.does(PairDid.Scan(opened.code!!, chance))
            val line = opened.lines.indexOf(compared.words.joinToString(" ")) + 1
            coach.does(PairDid.Pick(line.toUInt(), null))
            athlete.does(PairDid.Match(matches = true, shareEarlier = true))
            for (host in listOf(coach, athlete, coach, athlete)) host.exchange(shelf)
        }
    }

    /** The clock of the hold begins. */
    fun holds(): SessionScreen = soon {
        athlete.tap(Tap.Begin(null), null)
        athlete.tap(Tap.Clock("Calves", Act.BEGIN, null), null)
    }

    override fun close() = coach.close()

    companion object {
        fun start(name: String, role: Role, chance: Int) =
            Start(role, name, MassUnit.KG, ByteArray(96) { (chance * 37 + it).toByte() })

        /** The plan that all checks share, begun this week. */
        fun plan(): String {
            val monday = LocalDate.now().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY))
            val text = File(System.getProperty("holdfast.fixtures"), "small-plan.toml").readText()
            return text.replace(Regex("starts = .*"), "starts = $monday")
        }
    }
}

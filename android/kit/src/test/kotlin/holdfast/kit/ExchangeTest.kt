package holdfast.kit

import holdfast.core.ExchangeReport
import holdfast.core.ExchangeStep
import holdfast.core.HoldfastException
import holdfast.core.PieceKindView
import holdfast.core.Role
import holdfast.core.SessionState
import holdfast.core.Tap
import java.io.IOException
import java.nio.file.Path
import java.time.LocalDate
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertTrue
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.CoroutineStart
import kotlinx.coroutines.async
import kotlinx.coroutines.awaitAll
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.withTimeout
import kotlinx.coroutines.withTimeoutOrNull
import org.junit.jupiter.api.io.TempDir

private const val DATE = "2026-11-03"

private val NOTHING = ExchangeReport(0u, 0uL, 0u, listOf(), listOf())

class ExchangeTest {
    /** A coach's device with the small plan published, and a paired athlete's that knows nothing of it. */
    private fun twoDevices(homes: Path, work: suspend (coach: Host, zoe: Host) -> Unit) = runBlocking {
        suspend fun host(role: Role, name: String, chance: Int) =
            Host.start(homes.resolve(name).toString(), start(role, name, chance = chance), { evening(DATE) })
        host(Role.COACH, "Märta", 0).use { coach ->
            host(Role.ATHLETE, "Zoë", 60).use { zoe ->
                pair(coach.ask { this }, zoe.ask { this }, evening(DATE), 1)
                coach.ask { now -> publish("small-plan.toml", Fixtures.plan(), now) }
                work(coach, zoe)
            }
        }
    }

    @Test
    fun `a plan goes out and a log comes back`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            assertEquals(SessionState.NO_PLAN, zoe.today().state)
            assertTrue(coach.exchange(carrier).put > 0u)
            assertTrue(zoe.exchange(carrier).leaves > 0u)
            assertEquals(SessionState.READY, zoe.today().state)

            zoe.tap(Tap.Begin(null), null)
            zoe.tap(squat(kilograms(50), 7u), null)
            zoe.tap(Tap.Finish(7u, 60u), null)
            assertEquals(1u, zoe.exchange(carrier).put)
            // Who she is went out when she joined, the session after it.
            assertEquals(2u, coach.exchange(carrier).leaves)
            val page = coach.ask { member("Zoë", LocalDate.parse(DATE)) }
            assertEquals(listOf(60u), page.sessions.map { it.minutes })
            assertEquals(listOf(kilograms(50)), page.lifts.single().points.map { it.heaviest })

            assertEquals(NOTHING, zoe.exchange(carrier), "both have everything")
        }

    @Test
    fun `a file that cannot be read is said, and comes another time`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            coach.exchange(carrier)
            carrier.unreadable += carrier.files.keys
            val without = zoe.exchange(carrier)
            // One of the coach's two files is for her; the other she never asks for.
            assertTrue(without.aside.single().name in carrier.unreadable)
            assertEquals(0u, without.leaves)
            carrier.unreadable.clear()
            assertTrue(zoe.exchange(carrier).leaves > 0u)
        }

    @Test
    fun `a file that cannot be written keeps nobody from bringing the others`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            carrier.unwritable = { true }
            val nothing = assertFailsWith<HoldfastException.Storage> { coach.exchange(carrier) }
            assertEquals("it is full", nothing.reason)
            carrier.unwritable = { false }
            coach.exchange(carrier)
            carrier.unwritable = { true }
            val fetched = zoe.exchange(carrier)
            assertEquals(listOf(1u, 0u), listOf(fetched.leaves, fetched.put))
            assertEquals(
                listOf("This file could not be delivered: it is full"),
                fetched.aside.map { it.reason },
            )
            carrier.unwritable = { false }
            val delivered = zoe.exchange(carrier)
            assertEquals(1u, delivered.put)
            assertEquals(listOf(), delivered.aside)
        }

    @Test
    fun `what a carrier throws arrives, and the next exchange begins again`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            coach.exchange(carrier)
            carrier.onList = { throw IOException("no connection") }
            assertEquals("no connection", assertFailsWith<IOException> { zoe.exchange(carrier) }.message)
            carrier.onList = {}
            assertTrue(zoe.exchange(carrier).leaves > 0u)
        }

    @Test
    fun `one that is cancelled stops, and the next need not wait for it`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            coach.exchange(carrier)
            val never = CompletableDeferred<Unit>()
            carrier.onList = { never.await() }
            runBlocking {
                val cancelled = launch(start = CoroutineStart.UNDISPATCHED) { zoe.exchange(carrier) }
                withTimeout(10_000) {
                    cancelled.cancel()
                    cancelled.join()
                }
            }
            carrier.onList = {}
            assertTrue(withTimeout(10_000) { zoe.exchange(carrier) }.leaves > 0u)
        }

    @Test
    fun `one that is cancelled takes no further step, whatever its carrier does`() = runBlocking {
        val carrier = MemoryCarrier()
        var steps = 0
        val cancelled = launch {
            carrier.onList = { cancel() }
            carrier.exchange { if (steps++ == 0) ExchangeStep.ListFiles else ExchangeStep.Done(NOTHING) }
        }
        cancelled.join()
        assertEquals(1, steps)
    }

    @Test
    fun `taps go on during an exchange, and a second one takes its turn`(@TempDir homes: Path) =
        twoDevices(homes) { coach, zoe ->
            val carrier = MemoryCarrier()
            coach.exchange(carrier)
            zoe.exchange(carrier)
            zoe.tap(Tap.Begin(null), null)
            var listings = 0
            val both = CompletableDeferred<Unit>()
            carrier.onList = {
                zoe.tap(squat(kilograms(50), 7u, set = 1u), null)
                if (++listings == 2) both.complete(Unit)
                // Long enough for a second one that does not wait for its turn.
                withTimeoutOrNull(500) { both.await() }
            }
            val reports = runBlocking { List(2) { async { zoe.exchange(carrier) } }.awaitAll() }
            assertEquals(2, listings)
            // The second one's tap came after the first one's log was cut.
            assertEquals(listOf(1u, 1u), reports.map { it.put })
            val strength = zoe.today().pieces[0].kind as PieceKindView.Strength
            assertEquals(7u, strength.view.sets[0].done?.reps)
        }
}

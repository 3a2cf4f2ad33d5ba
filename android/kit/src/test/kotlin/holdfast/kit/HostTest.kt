package holdfast.kit

import holdfast.core.Field
import holdfast.core.HoldfastException
import holdfast.core.PieceKindView
import holdfast.core.Role
import holdfast.core.Row
import holdfast.core.SessionScreen
import holdfast.core.Tap
import java.nio.file.Files
import java.nio.file.Path
import java.util.concurrent.CountDownLatch
import java.util.concurrent.Executors
import java.util.concurrent.atomic.AtomicInteger
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertNull
import kotlin.test.assertTrue
import kotlin.time.Duration.Companion.seconds
import kotlinx.coroutines.CoroutineStart
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.asCoroutineDispatcher
import kotlinx.coroutines.async
import kotlinx.coroutines.awaitAll
import kotlinx.coroutines.coroutineScope
import kotlinx.coroutines.flow.first
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.withTimeout
import kotlinx.coroutines.withTimeoutOrNull
import org.junit.jupiter.api.io.TempDir

class HostTest {
    private suspend fun host(homes: Path): Host {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        return Host.open(homes.resolve("Zoë").toString(), { zoe.now })
    }

    /** Runs something while a question holds the queue. */
    private suspend fun whileHeld(host: Host, work: suspend () -> Unit) = coroutineScope {
        val held = CountDownLatch(1)
        val free = CountDownLatch(1)
        val question =
            launch(Dispatchers.Default) {
                host.ask {
                    held.countDown()
                    free.await()
                }
            }
        held.await()
        try {
            work()
        } finally {
            free.countDown()
            question.join()
        }
    }

    private fun reps(screen: SessionScreen) =
        (screen.pieces[0].kind as PieceKindView.Strength).view.sets.map { it.done?.reps }

    @Test
    fun `the last screen is kept for whoever draws it`(@TempDir homes: Path) = runBlocking {
        host(homes).use { host ->
            assertNull(host.screen.value)
            val next = async(start = CoroutineStart.UNDISPATCHED) { host.screen.first { it != null } }
            val today = host.today()
            assertEquals(today, withTimeout(10_000) { next.await() })
            val tapped = host.tap(squat(kilograms(50)), null)
            assertEquals(tapped, host.screen.value)
            val window = Row.Window("Corners", 1u)
            assertEquals(window, host.choose(window).here.row)
            assertEquals(window, host.screen.value?.here?.row)
            assertNotEquals(window, host.choose(null).here.row)
            assertEquals("Zoë", host.ask { who() }.name)
        }
    }

    @Test
    fun `a tap is done even when its maker is gone`(@TempDir homes: Path) = runBlocking {
        host(homes).use { host ->
            val maker =
                launch(start = CoroutineStart.UNDISPATCHED) { host.tap(squat(kilograms(50), 7u), null) }
            maker.cancel()
            maker.join()
            assertEquals(listOf(7u, null, null), reps(host.today()))
        }
    }

    @Test
    fun `a tap has the moment of its call and waits for its turn`(@TempDir homes: Path) = runBlocking {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        val taken = AtomicInteger()
        val clock = DeviceClock {
            taken.incrementAndGet()
            zoe.now
        }
        Host.open(homes.resolve("Zoë").toString(), clock).use { host ->
            var tap: Deferred<SessionScreen>? = null
            whileHeld(host) {
                val before = taken.get()
                tap = async(start = CoroutineStart.UNDISPATCHED) { host.tap(squat(kilograms(50), 7u), null) }
                assertEquals(before + 1, taken.get(), "its moment is that of the call")
                // Enough for a tap that does not wait: a set takes some milliseconds.
                assertNull(withTimeoutOrNull(500) { tap.await() }, "it waits for its turn")
            }
            assertEquals(listOf(7u, null, null), reps(tap!!.await()))
        }
    }

    @Test
    fun `whatever waits for the disk is off the caller's thread`(@TempDir homes: Path) = runBlocking {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        val disk = Executors.newFixedThreadPool(4) { Thread(it, "disk") }.asCoroutineDispatcher()
        val threads = mutableListOf<String>()
        fun note() {
            threads += Thread.currentThread().name.substringBefore(' ')
        }
        disk.use {
            Host.open(
                    homes.resolve("Zoë").toString(),
                    {
                        note()
                        zoe.now
                    },
                    disk,
                )
                .use { host ->
                    host.ask { note() }
                    host.today()
                }
        }
        assertEquals(List(4) { "disk" }, threads)
    }

    @Test
    fun `closing waits for the taps made before`(@TempDir homes: Path) = runBlocking {
        val host = host(homes)
        val made =
            (1u..20u).map { reps ->
                async(start = CoroutineStart.UNDISPATCHED) {
                    host.tap(squat(kilograms(50), reps, set = 1u), null)
                }
            }
        host.close()
        assertEquals(20u, reps(made.awaitAll().last())[0])
    }

    @Test
    fun `a host that nobody waits for any more is closed`(@TempDir homes: Path) = runBlocking {
        val (_, zoe) = crew(homes)
        zoe.core.shut()
        val log = homes.resolve("Zoë/holdfast.db-wal")
        val cancelled = CountDownLatch(1)
        var logged = false
        val maker =
            launch(start = CoroutineStart.UNDISPATCHED) {
                val home = homes.resolve("Zoë").toString()
                Host.open(
                        home,
                        {
                            cancelled.await()
                            zoe.now
                        },
                    )
                    .use { logged = true }
            }
        maker.cancel()
        cancelled.countDown()
        maker.join()
        assertFalse(logged, "the caller was gone")
        // SQLite keeps its log beside the database for as long as that is open.
        assertFalse(Files.exists(log), "it is still open")
        Host.open(homes.resolve("Zoë").toString(), { zoe.now }).use { assertTrue(Files.exists(log)) }
    }

    @Test
    fun `half a character is the caller's error`(@TempDir homes: Path) = runBlocking {
        host(homes).use { host ->
            val half = "Zo" + Char(0xD83D)
            val error = assertFailsWith<HoldfastException.Invalid> { host.tap(Tap.Begin(half), null) }
            assertEquals(Field.TEXT, error.field)
            val start = start(Role.ATHLETE, half)
            assertFailsWith<HoldfastException.Invalid> {
                Host.start(homes.resolve("half").toString(), start, { evening("2026-11-02") })
            }
        }
        Unit
    }

    @Test
    fun `taps made together come in their order`(@TempDir homes: Path) = runBlocking {
        host(homes).use { host ->
            val made =
                (1u..50u).map { reps ->
                    async(start = CoroutineStart.UNDISPATCHED) {
                        host.tap(squat(kilograms(50), reps, set = 1u), null)
                    }
                }
            val saved = made.awaitAll().map { it.saved!! }
            assertEquals(saved.sorted(), saved)
            assertEquals(50u, reps(host.screen.value!!)[0])
        }
    }

    @Test
    fun `nothing is asked of a host that is closed`(@TempDir homes: Path) = runBlocking {
        val host = host(homes)
        host.close()
        host.close()
        val error = assertFailsWith<HoldfastException.Invalid> { host.tap(Tap.Undo, null) }
        assertEquals("Holdfast is closed. Open it again.", error.words)
        assertNull(host.screen.value, "a failed tap shows nothing")
    }

    @Test
    fun `starting makes the home that opening finds`(@TempDir homes: Path) = runBlocking {
        val home = homes.resolve("Ægir's phone").toString()
        val clock = DeviceClock { evening("2026-11-02") }
        Host.start(home, start(Role.ATHLETE, "Ægir"), clock).close()
        Host.open(home, clock).use { assertEquals("Ægir", it.ask { who() }.name) }
    }

    @Test
    fun `two threads on one object lose nothing`(@TempDir homes: Path) {
        val (_, zoe) = crew(homes)
        val first = zoe.tap(squat(kilograms(50))).saved!!
        val each = 100
        fun logging(tap: (Int) -> Tap) = Thread { repeat(each) { zoe.core.tap(tap(it), null, zoe.now) } }
        val threads =
            listOf(
                logging { squat(kilograms(50), it.toUInt(), set = 1u) },
                logging { window(1u, it.toUInt(), 5.seconds) },
            )
        threads.forEach(Thread::start)
        threads.forEach(Thread::join)
        val screen = zoe.tap(squat(kilograms(60)))
        assertEquals(first + (2 * each).toULong() + 1u, screen.saved)
        assertEquals(99u, reps(screen)[0])
        assertEquals(99u, (screen.pieces[1].kind as PieceKindView.Interval).view.windows[0].reps)
    }
}

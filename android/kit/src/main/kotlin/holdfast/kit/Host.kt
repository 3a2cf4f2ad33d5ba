package holdfast.kit

import holdfast.core.ExchangeReport
import holdfast.core.Holdfast
import holdfast.core.Restore
import holdfast.core.Row
import holdfast.core.SessionScreen
import holdfast.core.Start
import holdfast.core.Tap
import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.NonCancellable
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.asStateFlow
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.sync.Mutex
import kotlinx.coroutines.sync.withLock
import kotlinx.coroutines.withContext

/**
 * Hosts the device's one [Holdfast] and keeps it off the main thread.
 *
 * Taps are done one after the other, in the order they were made. Each is on disk before [tap] returns, and a
 * tap that was made is done even when whoever made it is cancelled meanwhile: a screen that turns must not
 * lose a set.
 *
 * Every call throws [holdfast.core.HoldfastException] with its reason in fields; [words] has it as a
 * sentence. Text with half a surrogate pair is refused as [Invalid][holdfast.core.HoldfastException.Invalid].
 * One host a process and home folder is enough: keep it in the application, not in a screen.
 */
public class Host
private constructor(
    private val core: Holdfast,
    private val clock: DeviceClock,
    private val queue: CoroutineDispatcher,
) : AutoCloseable {
    private val latest = MutableStateFlow<SessionScreen?>(null)
    private val exchanging = Mutex()

    /** The session screen as it was last; null until [today], [choose] or [tap] is called. */
    public val screen: StateFlow<SessionScreen?> = latest.asStateFlow()

    /** Reads the session screen as it is now. */
    public suspend fun today(): SessionScreen = show { core.today(clock.now()) }

    /**
     * Chooses a row by hand: the screen's key is about it until something is logged. Without a row the screen
     * follows the day again.
     */
    public suspend fun choose(row: Row?): SessionScreen = show {
        wellFormed { core.choose(row, clock.now()) }
    }

    /**
     * Does what a tap says. The moment is that of the call, however long its turn takes to come.
     *
     * [answers] is the [revision][SessionScreen.revision] of the screen whose key was pressed, so that a key
     * pressed twice is done once; null for what was typed or chosen, which is always meant.
     */
    public suspend fun tap(tap: Tap, answers: ULong?): SessionScreen {
        val at = clock.now()
        return show { wellFormed { core.tap(tap, answers, at) } }
    }

    /**
     * Takes files to a carrier and from it until both sides have everything. Exchanges take turns, and taps
     * go on between their steps.
     *
     * One that is cancelled stops between two steps; what was taken in by then is kept. [screen] stays as it
     * is: a plan may have come, so call [today] after it.
     */
    public suspend fun exchange(carrier: Carrier): ExchangeReport =
        exchanging.withLock { carrier.exchange { did -> ask { now -> wellFormed { exchange(did, now) } } } }

    /**
     * Asks anything else of the core, in turn with the taps: `host.ask { now -> board(date) }`.
     *
     * What is asked does not change [screen], so a tap belongs in [tap]. Half a surrogate pair throws
     * [java.nio.charset.MalformedInputException] here.
     */
    public suspend fun <T> ask(question: Holdfast.(now: holdfast.core.Instant) -> T): T =
        withContext(NonCancellable + queue) { core.question(clock.now()) }

    /**
     * Closes the database, after the taps that were made before. Calls after it are refused with
     * [Invalid][holdfast.core.HoldfastException.Invalid]; closing twice is harmless.
     *
     * Waits for its turn and the disk; from inside [ask] its turn would never come.
     */
    override fun close(): Unit = runBlocking { shut() }

    private suspend fun shut() = withContext(NonCancellable + queue) { core.shut() }

    private suspend fun show(next: () -> SessionScreen): SessionScreen =
        // Shown before the next one's turn, so that an older screen never covers a newer one.
        withContext(NonCancellable + queue) { next().also { latest.value = it } }

    /** How a host is had. */
    public companion object {
        /**
         * Opens a home folder that somebody started before. [keystore] is the 32 bytes that it was started
         * with, from the system's keystore.
         *
         * Throws [LibraryUnusable] when the app's library is missing or of another version.
         */
        public suspend fun open(
            home: String,
            clock: DeviceClock,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
            keystore: ByteArray? = null,
        ): Host = host(clock, dispatcher) { Holdfast.open(home, clock.now(), keystore) }

        /** Makes a home folder for somebody who starts. Throws as [open] does. */
        public suspend fun start(
            home: String,
            start: Start,
            clock: DeviceClock,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
            keystore: ByteArray? = null,
        ): Host = host(clock, dispatcher) { Holdfast.start(home, start, clock.now(), keystore) }

        /**
         * Makes a home folder with what a search by a recovery code found; [chance] is 64 bytes and more. The
         * next exchange brings the log. Throws as [open] does.
         */
        public suspend fun restore(
            home: String,
            found: Restore,
            chance: ByteArray,
            clock: DeviceClock,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
            keystore: ByteArray? = null,
        ): Host = host(clock, dispatcher) { Holdfast.restore(home, found, chance, clock.now(), keystore) }

        private suspend fun host(
            clock: DeviceClock,
            dispatcher: CoroutineDispatcher,
            make: () -> Holdfast,
        ): Host {
            val queue = dispatcher.limitedParallelism(1)
            var made: Host? = null
            try {
                return withContext(NonCancellable + queue) {
                    Host(loaded { wellFormed(make) }, clock, queue).also { made = it }
                }
            } catch (gone: CancellationException) {
                // Whoever asked is gone, so nobody else can close it.
                made?.shut()
                throw gone
            }
        }
    }
}

package holdfast.kit

import holdfast.core.Holdfast
import holdfast.core.SessionScreen
import holdfast.core.Start
import holdfast.core.Tap
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.NonCancellable
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.asStateFlow
import kotlinx.coroutines.withContext

/**
 * Holds the device's one [Holdfast] and keeps it off the main thread.
 *
 * Taps are done one after the other, in the order they were made. Each is on disk before [tap]
 * returns, and a tap that was made is done even when whoever made it is cancelled meanwhile: a
 * screen that turns must not lose a set.
 *
 * Every call throws [holdfast.core.CompanionException] with its reason in fields; [words] has it as
 * a sentence. One keeper a process and home folder is enough: keep it in the application, not in a
 * screen.
 */
class Keeper private constructor(
    private val core: Holdfast,
    private val moments: Moments,
    private val lane: CoroutineDispatcher,
) : AutoCloseable {
    private val shown = MutableStateFlow<SessionScreen?>(null)

    /** The session screen as it was last; null until [today] or [tap] is called. */
    val screen: StateFlow<SessionScreen?> = shown.asStateFlow()

    /** Reads the session screen as it is now. */
    suspend fun today(): SessionScreen = show { core.today(moments.now()) }

    /** Does what a tap says. The moment is that of the call, however long its turn takes to come. */
    suspend fun tap(tap: Tap): SessionScreen {
        val at = moments.now()
        return show { core.tap(tap, at) }
    }

    /** Asks anything else of the core, in turn with the taps: `keeper.ask { now -> board(date) }`. */
    suspend fun <T> ask(question: Holdfast.(now: holdfast.core.Instant) -> T): T =
        withContext(NonCancellable + lane) { core.question(moments.now()) }

    /**
     * Closes the database. Calls after it are refused with
     * [Invalid][holdfast.core.CompanionException.Invalid]; closing twice is harmless. Waits for the disk.
     */
    override fun close() = core.shut()

    private suspend fun show(next: () -> SessionScreen): SessionScreen =
        // Shown from inside the lane, so that an older screen never covers a newer one.
        withContext(NonCancellable + lane) { next().also { shown.value = it } }

    companion object {
        /** Opens a home folder that somebody started before. */
        suspend fun open(
            home: String,
            moments: Moments,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
        ): Keeper = keeper(moments, dispatcher) { Holdfast.open(home, moments.now()) }

        /** Makes a home folder for somebody who starts. */
        suspend fun start(
            home: String,
            start: Start,
            moments: Moments,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
        ): Keeper = keeper(moments, dispatcher) { Holdfast.start(home, start, moments.now()) }

        private suspend fun keeper(
            moments: Moments,
            dispatcher: CoroutineDispatcher,
            make: () -> Holdfast,
        ): Keeper {
            val lane = dispatcher.limitedParallelism(1)
            return withContext(NonCancellable + lane) { Keeper(loaded(make), moments, lane) }
        }
    }
}

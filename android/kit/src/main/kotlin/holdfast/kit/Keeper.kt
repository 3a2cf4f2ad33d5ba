package holdfast.kit

import holdfast.core.Holdfast
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
import kotlinx.coroutines.withContext

/**
 * Holds the device's one [Holdfast] and keeps it off the main thread.
 *
 * Taps are done one after the other, in the order they were made. Each is on disk before [tap] returns, and a
 * tap that was made is done even when whoever made it is cancelled meanwhile: a screen that turns must not
 * lose a set.
 *
 * Every call throws [holdfast.core.CompanionException] with its reason in fields; [words] has it as a
 * sentence. Text with half a surrogate pair is refused as
 * [Invalid][holdfast.core.CompanionException.Invalid]. One keeper a process and home folder is enough: keep
 * it in the application, not in a screen.
 */
public class Keeper
private constructor(
    private val core: Holdfast,
    private val moments: Moments,
    private val lane: CoroutineDispatcher,
) : AutoCloseable {
    private val shown = MutableStateFlow<SessionScreen?>(null)

    /** The session screen as it was last; null until [today] or [tap] is called. */
    public val screen: StateFlow<SessionScreen?> = shown.asStateFlow()

    /** Reads the session screen as it is now. */
    public suspend fun today(): SessionScreen = show { core.today(moments.now()) }

    /** Does what a tap says. The moment is that of the call, however long its turn takes to come. */
    public suspend fun tap(tap: Tap): SessionScreen {
        val at = moments.now()
        return show { wellFormed { core.tap(tap, at) } }
    }

    /**
     * Asks anything else of the core, in turn with the taps: `keeper.ask { now -> board(date) }`.
     *
     * What is asked does not change [screen], so a tap belongs in [tap]. Half a surrogate pair throws
     * [java.nio.charset.MalformedInputException] here.
     */
    public suspend fun <T> ask(question: Holdfast.(now: holdfast.core.Instant) -> T): T =
        withContext(NonCancellable + lane) { core.question(moments.now()) }

    /**
     * Closes the database, after the taps that were made before. Calls after it are refused with
     * [Invalid][holdfast.core.CompanionException.Invalid]; closing twice is harmless.
     *
     * Waits for its turn and the disk; from inside [ask] its turn would never come.
     */
    override fun close(): Unit = runBlocking { shut() }

    private suspend fun shut() = withContext(NonCancellable + lane) { core.shut() }

    private suspend fun show(next: () -> SessionScreen): SessionScreen =
        // Shown from inside the lane, so that an older screen never covers a newer one.
        withContext(NonCancellable + lane) { next().also { shown.value = it } }

    /** How a keeper is had. */
    public companion object {
        /**
         * Opens a home folder that somebody started before.
         *
         * Throws [LibraryUnusable] when the app's library is missing or of another version.
         */
        public suspend fun open(
            home: String,
            moments: Moments,
            dispatcher: CoroutineDispatcher = Dispatchers.IO,
        ): Keeper = keeper(moments, dispatcher) { Holdfast.open(home, moments.now()) }

        /** Makes a home folder for somebody who starts. Throws as [open] does. */
        public suspend fun start(
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
            var made: Keeper? = null
            try {
                return withContext(NonCancellable + lane) {
                    Keeper(loaded { wellFormed(make) }, moments, lane).also { made = it }
                }
            } catch (gone: CancellationException) {
                // Whoever asked is gone, so nobody else can close it.
                made?.shut()
                throw gone
            }
        }
    }
}

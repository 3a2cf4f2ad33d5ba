package holdfast.app

import android.os.Looper
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.async
import kotlinx.coroutines.runBlocking
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** The app that the test runs in. */
internal val app: HoldfastApplication
    get() = RuntimeEnvironment.getApplication() as HoldfastApplication

/** Lets the thread that draws run until something is so. */
internal fun until(what: String, isSo: () -> Boolean) {
    val end = System.nanoTime() + 20_000_000_000
    while (!isSo()) {
        shadowOf(Looper.getMainLooper()).idle()
        check(System.nanoTime() < end) { "waited too long: $what" }
        Thread.sleep(1)
    }
}

/** Waits for what is done on that thread and others. */
internal fun <T> soon(act: suspend () -> T): T {
    val done = CoroutineScope(SupervisorJob() + MainThread).async { act() }
    until("it is done") { done.isCompleted }
    return runBlocking { done.await() }
}

/** What it throws, waited for. */
internal inline fun <reified E : Throwable> soonFails(noinline act: suspend () -> Unit): E {
    try {
        soon(act)
    } catch (error: Throwable) {
        // A coroutine may hand over a copy that has the first as its cause.
        return error as? E ?: error.cause as? E ?: throw error
    }
    throw AssertionError("it did not fail")
}

/** A folder of this test's own. */
internal fun folder(name: String): File = File(app.cacheDir, name).also { it.mkdirs() }

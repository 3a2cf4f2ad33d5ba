package holdfast.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Intent
import android.content.pm.PackageManager
import holdfast.core.platformWords
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.withContext

/**
 * Asks somebody through the system's own screens, whichever activity is there: a chooser stays open while the
 * phone is turned, and its answer reaches the activity that was made anew.
 */
internal class Asking {
    private var activity: Activity? = null
    private val waiting = mutableMapOf<Int, CompletableDeferred<Intent?>>()
    private val permitting = mutableMapOf<Int, CompletableDeferred<Boolean>>()
    private var count = 0

    /** The activity that is there. */
    fun attach(now: Activity) {
        activity = now
    }

    /** It is gone, unless another one came first. */
    fun detach(gone: Activity) {
        if (activity === gone) activity = null
    }

    /**
     * Starts an activity for its answer; null where it was called off. [missing] is said where no app does
     * it.
     */
    suspend fun ask(intent: Intent, missing: String = platformWords().noChooser): Intent? =
        withContext(MainThread) {
            val code = ++count
            val answer = CompletableDeferred<Intent?>()
            waiting[code] = answer
            try {
                (activity ?: return@withContext null).startActivityForResult(intent, code)
                answer.await()
            } catch (error: ActivityNotFoundException) {
                throw Carried(missing, error)
            } finally {
                waiting -= code
            }
        }

    /** Starts an activity that answers nothing. */
    suspend fun start(intent: Intent, missing: String): Unit =
        withContext(MainThread) {
            try {
                activity?.startActivity(intent)
            } catch (error: ActivityNotFoundException) {
                throw Carried(missing, error)
            }
        }

    /** Asks for a permission, unless it is given. */
    suspend fun permission(name: String): Boolean =
        withContext(MainThread) {
            val activity = activity ?: return@withContext false
            if (activity.checkSelfPermission(name) == PackageManager.PERMISSION_GRANTED) {
                return@withContext true
            }
            val code = ++count
            val answer = CompletableDeferred<Boolean>()
            permitting[code] = answer
            try {
                activity.requestPermissions(arrayOf(name), code)
                answer.await()
            } finally {
                permitting -= code
            }
        }

    /** An answer came. */
    fun answered(code: Int, result: Int, data: Intent?) {
        waiting[code]?.complete(data.takeIf { result == Activity.RESULT_OK })
    }

    /** An answer to a permission came. An empty one was called off. */
    fun permitted(code: Int, results: IntArray) {
        permitting[code]?.complete(results.firstOrNull() == PackageManager.PERMISSION_GRANTED)
    }
}

package holdfast.app

import android.os.Handler
import android.os.Looper
import kotlin.coroutines.CoroutineContext
import kotlinx.coroutines.CoroutineDispatcher

/** The thread that draws, for coroutines. */
internal object MainThread : CoroutineDispatcher() {
    private val handler
        get() = Handler(Looper.getMainLooper())

    override fun isDispatchNeeded(context: CoroutineContext): Boolean =
        Looper.myLooper() != Looper.getMainLooper()

    override fun dispatch(context: CoroutineContext, block: Runnable) {
        handler.post(block)
    }
}

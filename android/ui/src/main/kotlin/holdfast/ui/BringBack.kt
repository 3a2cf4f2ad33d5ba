package holdfast.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.Restore
import holdfast.core.RestoreAnswers
import holdfast.core.restorePage
import holdfast.core.serverPage
import holdfast.kit.Host
import holdfast.kit.search
import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.Job
import kotlinx.coroutines.coroutineScope
import kotlinx.coroutines.launch

/** Somebody's log comes back on a new phone: what they typed, what carries files, what was found there. */
internal class BringBack(private val phone: Phone) {
    /** True while something takes its time: a search, a home that is made. */
    var busy: Boolean by mutableStateOf(false)
        private set

    /** True while a home is made: that is not left on the way. */
    var writes: Boolean = false
        private set

    private var looking: Job? = null
    private var code = ""
    private var found: Restore? = null
    private var form: PageAsk.Server? = null
    private var carriers: List<KeptCarrier> = emptyList()

    /** What is on screen. */
    fun page(): PageScreen {
        form?.let {
            return serverPage(it.kind, it.address)
        }
        return restorePage(RestoreAnswers(code, carriers.map { it.place }, found?.text()))
    }

    /** Reads what carries files on this phone. */
    suspend fun begin() {
        carriers = phone.carriers()
    }

    /** One step back; false on the first page, where a search that is under way ends. */
    fun back(): Boolean {
        looking?.cancel()
        val over = form != null || found != null
        form = null
        found = null
        return over
    }

    /** Does what a touch asks, one at a time; gives the host once there is one. */
    suspend fun does(act: PageAct, typed: List<String>): Host? {
        if (busy) return null
        busy = true
        writes = act is PageAct.Restore
        try {
            return did(act, typed)
        } finally {
            busy = false
            writes = false
        }
    }

    private suspend fun did(act: PageAct, typed: List<String>): Host? {
        if (form == null) typed.firstOrNull()?.let { code = it }
        when (act) {
            is PageAct.Open -> form = act.page as? PageAsk.Server
            is PageAct.ServerKind -> form = PageAsk.Server(act.kind, typed.first())
            is PageAct.KeepServer -> {
                phone.keepServer(serverOf(act.kind, typed))
                form = null
            }
            is PageAct.KeepFolder -> phone.keepFolder()
            is PageAct.Search -> coroutineScope { looking = launch { look() } }
            is PageAct.Restore -> return found?.let { phone.restore(it) }
            else -> {}
        }
        begin()
        return null
    }

    /**
     * In every carrier, until one has something: one that cannot be reached keeps it from no other. What the
     * last one says is told where none has. A slip in the code is told before any is asked.
     */
    private suspend fun look() {
        var nothing: Exception? = null
        for (carrier in carriers) {
            val search = Restore.begin(code)
            try {
                search.search(phone.reach(carrier))
                // It says what is missing, where that is too little to go on from.
                search.text()
                found = search
                return
            } catch (left: CancellationException) {
                throw left
            } catch (error: Exception) {
                nothing = error
            }
        }
        nothing?.let { throw it }
    }
}

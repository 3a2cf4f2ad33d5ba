package holdfast.ui

import holdfast.core.HoldfastException
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.Restore
import holdfast.core.RestoreAnswers
import holdfast.core.restorePage
import holdfast.core.serverPage
import holdfast.kit.Host
import holdfast.kit.search

/** Somebody's log comes back on a new phone: what they typed, what carries files, what was found there. */
internal class BringBack(private val phone: Phone) {
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

    /** One step back; false on the first page. */
    fun back(): Boolean {
        val over = form != null || found != null
        form = null
        found = null
        return over
    }

    /** Does what a touch asks; gives the host once there is one. */
    suspend fun does(act: PageAct, typed: List<String>): Host? {
        if (form == null) typed.firstOrNull()?.let { code = it }
        when (act) {
            is PageAct.Open -> form = act.page as? PageAsk.Server
            is PageAct.ServerKind -> form = PageAsk.Server(act.kind, typed.first())
            is PageAct.KeepServer -> {
                phone.keepServer(serverOf(act.kind, typed))
                form = null
            }
            is PageAct.KeepFolder -> phone.keepFolder()
            is PageAct.Search -> look()
            is PageAct.Restore -> return found?.let { phone.restore(it) }
            else -> {}
        }
        begin()
        return null
    }

    /** In every carrier, until one has something: what the last one says is told where none has. */
    private suspend fun look() {
        var nothing: Exception? = null
        for (carrier in carriers) {
            try {
                val search = Restore.begin(code)
                search.search(phone.reach(carrier))
                // It says what is missing, where that is too little to go on from.
                search.text()
                found = search
                return
            } catch (error: HoldfastException) {
                nothing = error
            }
        }
        nothing?.let { throw it }
    }
}

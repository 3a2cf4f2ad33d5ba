package holdfast.ui

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import holdfast.core.HoldfastException
import holdfast.core.Language
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.PairDid
import holdfast.core.PhoneChoices
import holdfast.core.RecoveryDid
import holdfast.core.ServerKind
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.words
import java.util.Locale
import kotlinx.coroutines.CancellationException

/** The language that the phone itself speaks, of those there are. */
public fun phoneLanguage(): Language = if (Locale.getDefault().language == "de") Language.DE else Language.EN

/**
 * The places beside a session: which are open, one over the other, and what a touch on one does. What stands
 * on a page and what can be touched is the core's.
 */
@Stable
public class Pages(private val host: Host, private val phone: Phone) {
    /** The page on top; null where none is open. */
    public val shown: PageScreen?
        get() = stands.open.lastOrNull()?.second

    /** What the page below is called; null where there is none. */
    public val below: String?
        get() = stands.open.run { getOrNull(size - 2)?.second?.title }

    /** The page that was opened first; null where none is open. */
    public val bottom: PageScreen?
        get() = stands.open.firstOrNull()?.second

    /** What went wrong last, as a sentence; null once something went right. */
    public var trouble: String? by mutableStateOf(null)
        private set

    /** What came of the last touch, as sentences. */
    public var told: List<String> by mutableStateOf(emptyList())
        private set

    /** True while something takes its time: an exchange, a camera. */
    public var busy: Boolean by mutableStateOf(false)
        private set

    /** Counts what was opened: what was typed on another page does not stand on this one. */
    public val turn: Int
        get() = stands.turn

    /** How somebody wants this phone to look and sound. */
    public var choices: PhoneChoices by mutableStateOf(phone.choices())
        private set

    /** How many pages are open, one over the other. */
    public val depth: Int
        get() = stands.open.size

    // One state: what is drawn never has a page with what was typed on another one.
    private var stands: Stands by mutableStateOf(Stands(emptyList(), 0))

    /** Opens a page over what is open. */
    public suspend fun open(ask: PageAsk) {
        trying {
            val asked = withOwn(ask)
            put(stands.open + (asked to host.ask { now -> page(asked, now) }))
        }
    }

    /** Opens a page in place of the one on top: nothing that was typed there stands on it. */
    private suspend fun instead(ask: PageAsk) {
        val page = host.ask { now -> page(ask, now) }
        put(stands.open.dropLast(1) + (ask to page), another = true)
    }

    /**
     * Opens a page in place of all others: never is there none in between, for then home would be all there
     * is.
     */
    public suspend fun only(ask: PageAsk) {
        trying {
            val asked = withOwn(ask)
            val page = host.ask { now -> page(asked, now) }
            told = emptyList()
            put(listOf(asked to page), another = true)
        }
    }

    /** Closes the page on top. False where none is open. */
    public fun back(): Boolean {
        if (stands.open.isEmpty()) return false
        put(stands.open.dropLast(1))
        return true
    }

    /** Closes all. */
    public fun close(): Unit = put(emptyList())

    /** Draws the page on top again. */
    public suspend fun look() {
        trying { again() }
    }

    /**
     * Does what a touch asks; [typed] is what stands in the page's fields. Gives true where it leads home.
     */
    public suspend fun does(act: PageAct, typed: List<String>): Boolean {
        trying {
            when (act) {
                is PageAct.Open -> return@trying open(act.page)
                is PageAct.Home -> return@trying close()
                is PageAct.Language -> {
                    host.ask { now -> chooseLanguage(act.language, now) }
                    speak(act.language ?: phoneLanguage())
                }
                is PageAct.Unit -> host.ask { now -> chooseUnit(act.unit, now) }
                is PageAct.Choose -> choose(act.choices)
                is PageAct.TryCue -> return@trying phone.tryCue()
                is PageAct.Exchange -> exchange()
                is PageAct.KeepFolder -> phone.keepFolder()
                is PageAct.ServerKind -> return@trying instead(PageAsk.Server(act.kind, typed.first()))
                is PageAct.KeepServer -> {
                    phone.keepServer(serverOf(act.kind, typed))
                    back()
                }
                is PageAct.ForgetCarrier -> {
                    phone.forget(phone.carriers()[act.index.toInt()])
                    back()
                }
                is PageAct.ShareCode -> {
                    val code = shown?.code ?: return@trying
                    return@trying phone.share(ChosenFile("code.txt", code.text.toByteArray()))
                }
                is PageAct.Publish -> publish()
                is PageAct.ConfirmCode ->
                    return@trying top(
                        host.ask { now -> recoveryPage(RecoveryDid.Confirm(typed.first()), now) }
                    )
                else -> return@trying pair(act, typed)
            }
            again()
        }
        return act is PageAct.Home && trouble == null
    }

    private suspend fun pair(act: PageAct, typed: List<String>) {
        val did =
            when (act) {
                is PageAct.Invite -> PairDid.Invite(phone.chance(CHANCE))
                is PageAct.Scan -> PairDid.Scan(phone.scan() ?: return, phone.chance(CHANCE))
                is PageAct.TypedCode -> PairDid.Scan(typed.first(), phone.chance(CHANCE))
                is PageAct.Pick -> PairDid.Pick(act.line, null)
                is PageAct.Match -> PairDid.Match(act.matches, act.shareEarlier)
                is PageAct.ShareEarlier -> PairDid.ShareEarlier
                is PageAct.StopPairing -> PairDid.Stop
                else -> return
            }
        top(host.ask { now -> pairPage(did, now) })
    }

    /**
     * With each carrier: one that cannot be reached keeps nothing from the others. The first fault is told.
     */
    private suspend fun exchange() {
        busy = true
        try {
            told = emptyList()
            val wrong =
                phone.carriers().mapNotNull { carrier ->
                    troubleOf { told = told + host.exchange(phone.reach(carrier)).told }
                }
            trouble = wrong.firstOrNull()
        } finally {
            busy = false
        }
    }

    private suspend fun publish() {
        val plan = phone.chooseFile() ?: return
        val summary = host.ask { now -> publish(plan.name, plan.content, now) }
        told = listOf(summary.block, summary.heading) + summary.notes.map { it.what }
    }

    /** A page that shows what this phone keeps by itself is drawn with that as it is now. */
    private suspend fun withOwn(ask: PageAsk): PageAsk =
        when (ask) {
            is PageAsk.Exchange -> PageAsk.Exchange(phone.carriers().map { it.place })
            is PageAsk.ThisPhone -> PageAsk.ThisPhone(choices)
            else -> ask
        }

    private fun choose(chosen: PhoneChoices) {
        phone.choose(chosen)
        choices = chosen
    }

    private suspend fun again() {
        val ask = withOwn(stands.open.lastOrNull()?.first ?: return)
        top(host.ask { now -> page(ask, now) })
    }

    private fun top(screen: PageScreen) = put(stands.open.dropLast(1) + (stands.open.last().first to screen))

    private fun put(now: List<Pair<PageAsk, PageScreen>>, another: Boolean = false) {
        val moves = now.size != stands.open.size
        if (moves) {
            told = emptyList()
            trouble = null
        }
        stands = Stands(now, if (moves || another) stands.turn + 1 else stands.turn)
    }

    /** What is open, the first below, and how often that changed. */
    private class Stands(val open: List<Pair<PageAsk, PageScreen>>, val turn: Int)

    private suspend fun trying(act: suspend () -> Unit) {
        trouble = null
        troubleOf(act)?.let { trouble = it }
    }

    private companion object {
        /** What every step of a pairing is given of chance, in bytes. */
        const val CHANCE = 64
    }
}

/** The server that was typed, in the order of its page's fields. */
internal fun serverOf(kind: ServerKind, typed: List<String>): Server =
    when (kind) {
        ServerKind.WEB_DAV -> {
            val (address, user, password) = typed
            Server.WebDav(address, user, password)
        }
        ServerKind.S3 -> {
            val (address, bucket, region, folder, keyId) = typed
            Server.S3(address, Bucket(bucket, region, folder, keyId), typed.last())
        }
    }

/**
 * Tries something, and gives what went wrong as a sentence. Whatever keeps a carrier from its files is said
 * in its own words: it is no fault of the app's.
 */
internal suspend fun troubleOf(act: suspend () -> Unit): String? =
    try {
        act()
        null
    } catch (error: HoldfastException) {
        error.words
    } catch (gone: CancellationException) {
        throw gone
    } catch (error: Exception) {
        error.message ?: error.toString()
    }

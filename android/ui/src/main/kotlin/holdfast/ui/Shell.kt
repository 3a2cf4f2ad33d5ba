package holdfast.ui

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import holdfast.core.Answers
import holdfast.core.Ask
import holdfast.core.HoldfastException
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageKey
import holdfast.core.PageScreen
import holdfast.core.PhoneWords
import holdfast.core.QuestionScreen
import holdfast.core.Row
import holdfast.core.SessionScreen
import holdfast.core.SideKey
import holdfast.core.SideKeyKind
import holdfast.core.Tap
import holdfast.core.phoneWords
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.words

/** Where somebody is. A question lies over any place, is answered, and is gone. */
public enum class Place {
    /** The day. */
    TODAY,

    /** What is at hand in the session. */
    SESSION,
}

/** A question that lies over a place. */
public data class Asked(val ask: Ask, val answers: Answers?, val screen: QuestionScreen)

/**
 * What is on screen and what a touch does: asks the core and shows what it gives. It decides nothing about
 * training.
 *
 * Everything in it can be lost: after a killed process [start] opens where the core says the session stands.
 */
@Stable
public class Shell(private val host: Host, phone: Phone) {
    /** The places beside the session. */
    public val pages: Pages = Pages(host, phone)

    /** True on a coach's phone: home is the board, and no session is trained. */
    public var coach: Boolean by mutableStateOf(false)
        private set

    /**
     * A coach's home, as it was when something lies over it; null where nothing does, and on an athlete's
     * phone.
     */
    public val home: PageScreen?
        get() = pages.bottom.takeIf { coach }

    /** What the way back from a page leads to; null on a coach's home. */
    public val backTo: String?
        get() =
            when {
                !coach -> pages.below ?: phoneWords.today
                // Of a board's page the day is the title: what it is says more.
                pages.depth == 2 -> phoneWords.board
                else -> pages.below
            }

    /** What the exchange stands at, in a few words, for home. */
    public var waits: String? by mutableStateOf(null)
        private set

    /** The session screen as it was last; null until [start]. */
    public var screen: SessionScreen? by mutableStateOf(null)
        private set

    /** Where somebody is. */
    public var place: Place by mutableStateOf(Place.TODAY)
        private set

    /** The question that lies over it. */
    public var asked: Asked? by mutableStateOf(null)
        private set

    /** What the one key at hand waits for, to be answered where one is. */
    public var inline: Asked? by mutableStateOf(null)
        private set

    /** True while the keys that do not fit beside the one key are shown. */
    public var more: Boolean by mutableStateOf(false)
        private set

    /** What went wrong last, as a sentence; null once something went right. */
    public var trouble: String? by mutableStateOf(null)
        private set

    /**
     * True while the phone is locked: whoever picks it up reads it. The clock alone is shown, and nothing can
     * be touched.
     */
    public var locked: Boolean by mutableStateOf(false)

    /** What has to come before any plan can: joining a crew; null once that was done. */
    public var joins: PageKey? by mutableStateOf(null)
        private set

    /** The words of the screens, in the language that is spoken. */
    public var phoneWords: PhoneWords by mutableStateOf(phoneWords())
        private set

    /** Opens where the session stands. */
    public suspend fun start() {
        trying {
            val who = host.ask { who() }
            who.language?.let { speak(it) }
            coach = who.role == holdfast.core.Role.COACH
            phoneWords = phoneWords()
            waits()
            if (coach) return@trying pages.only(PageAsk.Board)
            val now = host.today()
            show(now)
            place = if (now.state == holdfast.core.SessionState.RUNNING) Place.SESSION else Place.TODAY
        }
    }

    /** Does what a touch on a page asks. What was chosen or came by it shows at home too. */
    public suspend fun does(act: PageAct, typed: List<String>) {
        if (act is PageAct.Ask) return ask(act.ask)
        val home = pages.does(act, typed)
        phoneWords = phoneWords()
        trying(clears = false) {
            waits()
            if (!coach) show(host.today()) else if (home) pages.only(PageAsk.Board)
        }
    }

    private suspend fun waits() {
        val exchange = host.ask { now -> page(PageAsk.Exchange(emptyList()), now) }
        waits = exchange.block?.heading
        joins = exchange.key?.takeIf { it.does is PageAct.Open }
    }

    /** Reads again what is on screen: a clock has moved, or it was away. */
    public suspend fun look() {
        if (coach) return pages.look()
        trying(clears = false) { show(host.today()) }
    }

    /** Reads all that is on screen again: another language is spoken now. */
    public suspend fun again() {
        phoneWords = phoneWords()
        inline = null
        trying(clears = false) { waits() }
        look()
        if (!coach) pages.look()
        asked?.let { ask(it.ask, it.answers) }
    }

    /** Presses the one key. */
    public suspend fun press() {
        val here = screen?.here ?: return
        val tap = inline?.screen?.key?.tap ?: here.key.tap
        when {
            tap != null -> tap(tap)
            inline != null -> {}
            here.key.asks == holdfast.core.Question.DAY -> ask(Ask.Day)
            here.key.asks != null -> here.row?.let { ask(Ask.Row(it, whole = false)) }
        }
    }

    /** Presses a key beside it. */
    public suspend fun press(key: SideKey) {
        more = false
        val tap = key.tap
        if (tap != null) return tap(tap)
        val row = screen?.here?.row
        val piece = row?.let { pieceOf(it) }
        when (key.kind) {
            SideKeyKind.HURTS -> ask(Ask.Hurts(row.takeUnless { it is Row.Finish }))
            SideKeyKind.EXTRA -> ask(Ask.Extra)
            SideKeyKind.OTHER -> row?.let { ask(Ask.Row(it, whole = true)) }
            SideKeyKind.OPTION -> piece?.let { ask(Ask.Option(it)) }
            SideKeyKind.STATION -> piece?.let { ask(Ask.Station(it)) }
            SideKeyKind.FINISH -> ask(Ask.Row(Row.Finish, whole = false))
            SideKeyKind.CLEAR -> piece?.let { ask(Ask.Clear(it)) }
            else -> {}
        }
    }

    /** Asks a question, or goes on in one with what a touch led to. */
    public suspend fun ask(ask: Ask, answers: Answers? = null) {
        trying {
            val now = asked(ask, answers)
            if (inline?.ask == ask && asked == null && answers != null) inline = now else asked = now
        }
    }

    /**
     * Takes the answer, when the question's key has one. What was not saved, refused or come too soon after
     * another touch, stays on screen.
     */
    public suspend fun answer() {
        val tap = asked?.screen?.key?.tap ?: return
        tap(tap)
        if (trouble == null && screen?.ignored == false) {
            asked = null
            // It may be about what stands on a page.
            if (pages.shown != null) pages.look()
        }
    }

    /** Chooses a row by hand. */
    public suspend fun choose(row: Row) {
        trying {
            show(host.choose(row))
            goOn()
        }
    }

    /**
     * One step back: from a question, from the other keys, from the session to the day. Nothing ends by it.
     */
    public fun back(): Boolean {
        when {
            asked != null -> asked = null
            more -> more = false
            pages.shown != null -> return if (coach && pages.below == null) false else pages.back()
            place != Place.TODAY -> place = Place.TODAY
            else -> return false
        }
        return true
    }

    /** Goes on with the session. */
    public fun goOn() {
        // A place beside it would lie over it.
        pages.close()
        place = Place.SESSION
    }

    /** Closes the home folder: after it nothing is asked or saved any more. */
    public fun close() {
        host.close()
    }

    /** Opens a place beside the session. */
    public suspend fun open(ask: PageAsk) {
        pages.only(ask)
    }

    /** Shows the keys that do not fit. */
    public fun showMore() {
        more = true
    }

    private suspend fun show(now: SessionScreen) {
        val here = now.here
        val row = here.row
        val kept =
            inline?.takeIf {
                it.ask == row?.let { Ask.Row(it, whole = false) } && now.revision == screen?.revision
            }
        inline =
            when {
                row == null || here.key.asks !in answeredInPlace -> null
                kept != null -> kept
                else -> asked(Ask.Row(row, whole = false), null)
            }
        screen = now
    }

    private suspend fun asked(ask: Ask, answers: Answers?): Asked =
        Asked(ask, answers, host.ask { now -> question(ask, answers, now) })

    private suspend fun tap(tap: Tap) {
        trying {
            val now = host.tap(tap, screen?.revision)
            show(now)
            if (tap is Tap.Begin) goOn()
            if (now.state == holdfast.core.SessionState.FINISHED) place = Place.TODAY
        }
    }

    private suspend fun trying(clears: Boolean = true, act: suspend () -> Unit) {
        try {
            act()
            if (clears) trouble = null
        } catch (error: HoldfastException) {
            trouble = error.words
        }
    }
}

/** Questions that are asked on the screen of the row itself. */
private val answeredInPlace =
    setOf(
        holdfast.core.Question.REPS,
        holdfast.core.Question.RESERVE,
        holdfast.core.Question.RANGE,
        holdfast.core.Question.RPE,
    )

/** The piece that a row is in; null for the session's end. */
internal fun pieceOf(row: Row): String? =
    when (row) {
        is Row.Set -> row.piece
        is Row.Window -> row.piece
        is Row.Measure -> row.piece
        is Row.Hold -> row.piece
        is Row.Finish -> null
    }

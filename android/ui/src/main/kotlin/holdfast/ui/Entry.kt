package holdfast.ui

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.Role
import holdfast.core.Start
import holdfast.core.StartAnswers
import holdfast.core.firstRun
import holdfast.core.speak
import holdfast.kit.Host

/** The way in: who has started on this phone has their [shell], anybody else answers a few pages first. */
@Stable
public class Entry(private val phone: Phone) {
    /** What is on screen once somebody has started. */
    public var shell: Shell? by mutableStateOf(null)
        private set

    /** The page of somebody who starts. */
    public var first: PageScreen? by mutableStateOf(null)
        private set

    /** Counts the pages of somebody who starts. */
    public var step: Int by mutableStateOf(0)
        private set

    /** What went wrong last. */
    public var trouble: String? by mutableStateOf(null)
        private set

    /** True while something takes its time: a search. */
    public val busy: Boolean
        get() = bringsBack?.busy == true

    /** True on any page but the one that asks for the name, the first. */
    public val canGoBack: Boolean
        get() = bringsBack != null || first?.fields?.isEmpty() == true

    private var bringsBack: BringBack? by mutableStateOf(null)
    private var answers = StartAnswers(0u, null, "", null, null)

    /** Opens what there is, or begins. */
    public suspend fun start() {
        trying {
            speak(phoneLanguage())
            phone.open()?.let {
                return@trying enter(it)
            }
            show(answers)
        }
    }

    /** Does what a touch asks. */
    public suspend fun does(act: PageAct, typed: List<String>) {
        bringsBack?.let {
            return brings(it, act, typed)
        }
        when (act) {
            is PageAct.BringBack -> {
                answers = answers.copy(name = typed.firstOrNull() ?: answers.name)
                trying { shows(BringBack(phone).also { it.begin() }) }
            }
            is PageAct.Answer -> {
                val name = typed.firstOrNull() ?: answers.name
                val next = act.answers.copy(name = name)
                show(next)
            }
            is PageAct.Begin -> trying { begin(act.answers) }
            else -> {}
        }
    }

    /** One page back, with all that was answered. False on the first. */
    public fun back(): Boolean {
        shell?.let {
            return it.back()
        }
        if (!canGoBack) return false
        bringsBack?.let {
            if (it.writes) return true
            trouble = null
            // From its first page to who they are.
            if (it.back()) shows(it) else show(answers)
            return true
        }
        show(answers.copy(step = answers.step - 1u))
        return true
    }

    private suspend fun brings(back: BringBack, act: PageAct, typed: List<String>) {
        if (back.busy) return
        val wrong = troubleOf { back.does(act, typed)?.let { enter(it, bringsLog = true) } }
        // Whoever went back meanwhile is somewhere else.
        if (bringsBack !== back) return
        trouble = wrong
        shows(back)
    }

    /** Another page stands there where it is not only drawn again. */
    private fun shows(back: BringBack) {
        bringsBack = back
        val page = back.page()
        if (page.title != first?.title || page.fields.size != first?.fields?.size) step += 1
        first = page
    }

    private suspend fun begin(answers: StartAnswers) {
        val role = answers.role ?: return
        val unit = answers.unit ?: return
        val host = phone.start(Start(role, answers.name, unit, phone.chance(CHANCE)))
        answers.language?.let { language -> host.ask { now -> chooseLanguage(language, now) } }
        enter(host)
        // Nobody has a plan before they are in a crew.
        if (role == Role.ATHLETE) shell?.open(PageAsk.Pairing)
    }

    private suspend fun enter(host: Host, bringsLog: Boolean = false) {
        val shell = Shell(host, phone)
        shell.start()
        if (bringsLog) shell.open(PageAsk.Exchange(emptyList()))
        this.shell = shell
        first = null
        bringsBack = null
        // What the code found says who they are: the log itself comes by an exchange.
        if (bringsLog) shell.does(PageAct.Exchange, emptyList())
    }

    private fun show(now: StartAnswers) {
        speak(now.language ?: phoneLanguage())
        // What was typed on another page does not stand on this one, least of all a code as a name.
        step = if (bringsBack == null && now.step == answers.step) step else step + 1
        bringsBack = null
        answers = now
        trouble = null
        first = firstRun(now)
    }

    private suspend fun trying(act: suspend () -> Unit) {
        troubleOf(act)?.let { trouble = it }
    }

    private companion object {
        /** Bytes of chance that keys and identities are made of. */
        const val CHANCE = 96
    }
}

package holdfast.ui

import androidx.compose.runtime.Stable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import holdfast.core.HoldfastException
import holdfast.core.PageAct
import holdfast.core.PageAsk
import holdfast.core.PageScreen
import holdfast.core.Role
import holdfast.core.Start
import holdfast.core.StartAnswers
import holdfast.core.firstRun
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.words

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

    /** True on any page but the one that asks for the name, the first. */
    public val canGoBack: Boolean
        get() = first?.fields?.isEmpty() == true

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
        when (act) {
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
        show(answers.copy(step = answers.step - 1u))
        return true
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

    private suspend fun enter(host: Host) {
        val shell = Shell(host, phone)
        shell.start()
        this.shell = shell
        first = null
    }

    private fun show(now: StartAnswers) {
        speak(now.language ?: phoneLanguage())
        step = if (now.step == answers.step) step else step + 1
        answers = now
        trouble = null
        first = firstRun(now)
    }

    private suspend fun trying(act: suspend () -> Unit) {
        try {
            act()
        } catch (error: HoldfastException) {
            trouble = error.words
        }
    }

    private companion object {
        /** Bytes of chance that keys and identities are made of. */
        const val CHANCE = 96
    }
}

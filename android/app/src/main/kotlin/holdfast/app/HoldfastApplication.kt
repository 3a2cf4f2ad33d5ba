package holdfast.app

import android.app.Application
import android.content.res.Configuration
import holdfast.core.HoldfastException
import holdfast.core.Language
import holdfast.core.platformWords
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.ui.Entry
import holdfast.ui.phoneLanguage
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.asStateFlow
import kotlinx.coroutines.flow.collectLatest
import kotlinx.coroutines.flow.filterNotNull
import kotlinx.coroutines.launch

/** What lives as long as the process: the one host, what is on screen, and the clock that runs. */
internal class HoldfastApplication : Application() {
    /** Runs on the thread that draws. */
    val scope: CoroutineScope = CoroutineScope(SupervisorJob() + MainThread)

    /** Asks somebody through the system's screens. */
    val asking: Asking = Asking()

    /** What Android gives the screens. */
    lateinit var phone: AppPhone
        private set

    /** What is on screen: kept here, so that a phone that is turned loses nothing. */
    lateinit var entry: Entry
        private set

    /** The clock that runs. */
    lateinit var watch: ClockWatch
        private set

    /** What exchanges in the background could not do. */
    lateinit var unfinished: Unfinished
        private set

    /** What gives the cues of the clock. */
    lateinit var cues: Cues
        private set

    private val said = MutableStateFlow<String?>(null)
    private var language = Language.EN

    /** A sentence that the system is the reason of; null where there is none. */
    val told: StateFlow<String?> = said.asStateFlow()

    override fun onCreate() {
        super.onCreate()
        // Android: what is in here is left out of every backup.
        val own = noBackupFilesDir
        val clock = Moments(BootName(own, contentResolver).read())
        phone = AppPhone(this, clock, Keystore(own), asking, ::tryCue, ::tell)
        entry = Entry(phone)
        unfinished = Unfinished(File(own, "unfinished.json"))
        val speech = Speech(this, File(cacheDir, "speech"), ::noSpeech)
        cues = Cues(this, speech, heard = { phone.choices().heard }) { scope.launch { look() } }
        watch = ClockWatch(this, cues, ::tell)
        scope.launch { phone.host.filterNotNull().collectLatest(::follow) }
    }

    override fun onConfigurationChanged(now: Configuration) {
        super.onConfigurationChanged(now)
        scope.launch { languageOf(phone.host.value ?: return@launch)?.let { speak(it) } }
    }

    /** Reads the screen of the session again: a cue was due, or the system asks. */
    suspend fun look() {
        try {
            phone.open()?.today()
        } catch (_: HoldfastException) {
            // The screens say it when they ask.
        }
    }

    /** Says something, or with null nothing any more. */
    fun tell(sentence: String?) {
        said.value = sentence
    }

    /** The app leaves the screen: what was logged is made ready to go, and goes when there is a way. */
    suspend fun leaves() {
        val host = phone.host.value ?: return
        try {
            host.ask { cutLeaves() }
        } catch (_: HoldfastException) {
            // What could not be cut is cut by the exchange.
        }
        ExchangeJob.schedule(this, phone.stored())
    }

    /** As a hold's first cue, in the language that is spoken. */
    private fun tryCue() {
        val host = phone.host.value ?: return
        scope.launch {
            languageOf(host)
            cues.tryOut(platformWords().cueToTry, language)
        }
    }

    /** Said once a language: tones and vibration go on without it. */
    private fun noSpeech(of: Language) {
        val told = getSharedPreferences("told", MODE_PRIVATE)
        if (told.getBoolean("no-speech-$of", false)) return
        told.edit().putBoolean("no-speech-$of", true).apply()
        tell(platformWords().noSpeech)
    }

    private suspend fun follow(host: Host) {
        languageOf(host)
        host.screen.filterNotNull().collect { screen ->
            // A clock that begins is spoken in the language that is spoken now.
            if (screen.cues.isNotEmpty() && watch.shown.value == null) languageOf(host)
            watch.see(screen, language)
        }
    }

    private suspend fun languageOf(host: Host): Language? =
        try {
            (host.ask { who() }.language ?: phoneLanguage()).also { language = it }
        } catch (_: HoldfastException) {
            null
        }
}

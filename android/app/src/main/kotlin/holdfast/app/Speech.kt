package holdfast.app

import android.content.Context
import android.media.MediaPlayer
import android.os.Bundle
import android.speech.tts.TextToSpeech
import android.speech.tts.UtteranceProgressListener
import android.speech.tts.Voice
import holdfast.core.Language
import java.io.File
import java.io.IOException
import java.security.MessageDigest
import java.util.Locale
import java.util.concurrent.ConcurrentHashMap

/**
 * Spoken cues as files that are made ahead, one a sentence, voice and language, and played from this process.
 *
 * Android: binding a speech engine takes seconds, and some phones have none. A file starts at once, and its
 * sound is that of our own service, which the system lets play behind a locked screen.
 */
internal open class Speech(
    private val context: Context,
    private val folder: File,
    private val missing: (Language) -> Unit = {},
) {
    /** True once it is known that no engine or no voice of the language is there. */
    @Volatile
    var isMissing: Boolean = false
        private set(now) {
            field = now
            if (now) missing(language)
        }

    private var engine: TextToSpeech? = null
    private var ready = false
    private var language = Language.EN
    private val wanted = LinkedHashSet<String>()
    private val making = ConcurrentHashMap.newKeySet<String>()
    private var player: MediaPlayer? = null

    // Asking the engine crosses to another process, and this is wanted with every cue.
    private var voice = ""

    /** Makes files of sentences that have none yet. Returns at once. */
    @Synchronized
    fun prepare(sentences: Collection<String>, spoken: Language) {
        if (spoken != language) {
            language = spoken
            wanted.clear()
            if (ready) choose()
        }
        wanted += sentences
        if (engine == null) engine = TextToSpeech(context) { status -> begun(status) }
        if (ready) make()
    }

    /** Speaks a sentence, if its file is there. A cue never waits for it. */
    @Synchronized
    open fun say(sentence: String): Boolean {
        val file = file(sentence).takeIf { it.exists() } ?: return false
        val next = MediaPlayer()
        return try {
            next.setAudioAttributes(guidance)
            next.setDataSource(file.path)
            next.prepare()
            next.start()
            player?.release()
            player = next
            true
        } catch (_: IOException) {
            // What the engine wrote cannot be played: it is made anew the next time.
            next.release()
            file.delete()
            false
        } catch (_: IllegalStateException) {
            next.release()
            false
        }
    }

    /** Lets go of the engine. */
    @Synchronized
    open fun release() {
        player?.release()
        player = null
        engine?.shutdown()
        engine = null
        ready = false
    }

    /** Where a sentence's file is, or will be. */
    fun file(sentence: String): File {
        val key = listOf(voice, language.name, sentence).joinToString("\n")
        val digest = MessageDigest.getInstance("SHA-256").digest(key.toByteArray())
        return File(folder, digest.take(NAME_BYTES).joinToString("") { "%02x".format(it) } + ".wav")
    }

    @Synchronized
    private fun begun(status: Int) {
        ready = status == TextToSpeech.SUCCESS && engine != null
        isMissing = !ready
        if (!ready) return
        engine?.setOnUtteranceProgressListener(Made())
        choose()
        make()
    }

    /**
     * A voice of the language that the core speaks, whatever the phone's own is. One that needs a network is
     * none.
     */
    private fun choose() {
        val engine = engine ?: return
        val locale = if (language == Language.DE) Locale.GERMAN else Locale.ENGLISH
        val has = engine.setLanguage(locale) >= TextToSpeech.LANG_AVAILABLE
        val first = engine.voice
        val own = engine.voices.orEmpty().filter { it.locale.language == locale.language && it.isLocal() }
        val near = own.maxByOrNull { it.quality }
        val far = first?.isNetworkConnectionRequired == true
        if (far && near != null) engine.voice = near
        voice = (if (far) near else first)?.name.orEmpty()
        isMissing = !has || far && near == null
    }

    private fun Voice.isLocal() =
        !isNetworkConnectionRequired && TextToSpeech.Engine.KEY_FEATURE_NOT_INSTALLED !in features

    private fun make() {
        val engine = engine ?: return
        if (isMissing) return
        folder.mkdirs()
        for (sentence in wanted.toList()) {
            wanted -= sentence
            val file = file(sentence)
            if (file.exists() || !making.add(file.path)) continue
            // Half a file is never played: it gets its name when it is whole.
            val part = File("${file.path}.part")
            if (engine.synthesizeToFile(sentence, Bundle(), part, file.path) != TextToSpeech.SUCCESS) {
                making -= file.path
            }
        }
    }

    private inner class Made : UtteranceProgressListener() {
        override fun onStart(id: String): Unit = Unit

        override fun onDone(id: String) {
            File("$id.part").renameTo(File(id))
            making -= id
        }

        @Deprecated("The system still calls it", level = DeprecationLevel.HIDDEN)
        override fun onError(id: String) = onError(id, TextToSpeech.ERROR)

        override fun onError(id: String, code: Int) {
            File("$id.part").delete()
            making -= id
        }
    }

    private companion object {
        const val NAME_BYTES = 12
    }
}

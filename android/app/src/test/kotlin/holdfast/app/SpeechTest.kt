package holdfast.app

import android.speech.tts.TextToSpeech
import android.speech.tts.Voice
import holdfast.core.CueKind
import holdfast.core.CueView
import holdfast.core.Language
import holdfast.core.speak
import java.io.File
import java.util.Locale
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue
import kotlin.time.Duration.Companion.seconds
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowMediaPlayer
import org.robolectric.shadows.ShadowTextToSpeech

@RunWith(RobolectricTestRunner::class)
class SpeechTest {
    private val folder = folder("speech")
    private val said = mutableListOf<Language>()
    private val speech = Speech(app, folder) { said += it }
    private val played = mutableListOf<String>()

    @BeforeTest
    fun begin() {
        speak(Language.EN)
        ShadowTextToSpeech.addLanguageAvailability(Locale.ENGLISH)
        ShadowMediaPlayer.setMediaInfoProvider {
            played += it.toString()
            ShadowMediaPlayer.MediaInfo(1_000, 0)
        }
    }

    private fun engine() = shadowOf(ShadowTextToSpeech.getLastTextToSpeechInstance())

    /** The engine answers, well or not. */
    private fun begins(status: Int = TextToSpeech.SUCCESS) {
        engine().onInitListener.onInit(status)
    }

    /** The engine wrote what it was asked for. */
    private fun writes(sentence: String, well: Boolean = true) {
        val file = speech.file(sentence)
        File("${file.path}.part").writeText("sound")
        val listener = engine().utteranceProgressListener
        if (well) listener.onDone(file.path) else listener.onError(file.path, TextToSpeech.ERROR_SYNTHESIS)
    }

    @Test
    fun aSentenceIsMadeAheadOnceAndPlayedFromItsFile() {
        speech.prepare(listOf("Contract"), Language.EN)
        assertFalse(speech.say("Contract"), "nothing is there yet, and nobody waits for it")
        begins()
        assertEquals("Contract", engine().lastSynthesizeToFileText)
        assertFalse(speech.say("Contract"))
        writes("Contract")
        assertTrue(speech.say("Contract"))
        assertEquals(1, played.size)
        speech.prepare(listOf("Contract", "Release"), Language.EN)
        assertEquals("Release", engine().lastSynthesizeToFileText)
    }

    @Test
    fun withoutAnEngineNothingIsSpokenAndThatIsKnown() {
        speech.prepare(listOf("Contract"), Language.EN)
        begins(TextToSpeech.ERROR)
        assertTrue(speech.isMissing)
        assertEquals(listOf(Language.EN), said)
        assertFalse(speech.say("Contract"))
    }

    @Test
    fun aPhoneThatCannotSpeakIsToldOnce() {
        app.cues.follow(listOf(cue("Contract")), Language.EN)
        begins(TextToSpeech.ERROR)
        assertEquals(
            "This phone has no voice for this language. Cues come as tones and vibration. " +
                "You can install a voice in the phone's settings.",
            app.told.value,
        )
        app.tell(null)
        begins(TextToSpeech.ERROR)
        assertEquals(null, app.told.value)
    }

    private fun cue(words: String) = CueView(1.seconds, 1_000_000, CueKind.CONTRACT, 1u, words)

    @Test
    fun withoutAGermanVoiceNothingIsSpokenInEnglish() {
        speech.prepare(listOf("Anspannen"), Language.DE)
        begins()
        assertTrue(speech.isMissing)
        assertEquals(null, engine().lastSynthesizeToFileText)
    }

    @Test
    fun aVoiceThatNeedsANetworkIsPassedOver() {
        fun voice(name: String, net: Boolean) =
            Voice(name, Locale.ENGLISH, Voice.QUALITY_HIGH, 1, net, emptySet())
        ShadowTextToSpeech.addVoice(voice("far", true))
        ShadowTextToSpeech.addVoice(voice("near", false))
        speech.prepare(listOf("Contract"), Language.EN)
        ShadowTextToSpeech.getLastTextToSpeechInstance().voice = voice("far", true)
        begins()
        assertEquals("near", engine().currentVoice.name)
        assertFalse(speech.isMissing)
    }

    @Test
    fun eachLanguageHasItsOwnFile() {
        ShadowTextToSpeech.addLanguageAvailability(Locale.GERMAN)
        speech.prepare(listOf("Start"), Language.EN)
        begins()
        val english = speech.file("Start")
        speech.prepare(listOf("Start"), Language.DE)
        assertNotEquals(english, speech.file("Start"))
    }

    @Test
    fun halfAFileIsNeverPlayed() {
        speech.prepare(listOf("Contract"), Language.EN)
        begins()
        writes("Contract", well = false)
        assertFalse(speech.say("Contract"))
        assertEquals(emptyList(), folder.list()!!.toList())
        // It is asked for again.
        speech.prepare(listOf("Contract"), Language.EN)
        writes("Contract")
        assertTrue(speech.say("Contract"))
    }
}

package holdfast.app

import android.media.AudioAttributes
import android.media.AudioFormat
import android.media.AudioTrack
import holdfast.core.CueKind
import java.nio.ByteBuffer
import java.nio.ByteOrder
import kotlin.math.PI
import kotlin.math.min
import kotlin.math.sin

/** How a cue of a kind feels and sounds: by its rhythm, so that kinds are told apart without looking. */
internal enum class Rhythm(val pulses: Int, val pulseMs: Int, val hertz: Int) {
    /** Something is about to change. */
    NOTICE(1, 120, 660),

    /** Something begins. */
    BEGIN(1, 350, 880),

    /** Change over. */
    CHANGE(2, 180, 880),

    /** It is over. */
    END(3, 220, 988);

    companion object {
        /** The rhythm of a kind of cue. */
        fun of(kind: CueKind): Rhythm =
            when (kind) {
                CueKind.GET_READY,
                CueKind.HALFWAY,
                CueKind.LAST_SECONDS -> NOTICE
                CueKind.BEGIN,
                CueKind.RELEASE -> BEGIN
                CueKind.CONTRACT,
                CueKind.SWITCH_SIDE,
                CueKind.NEXT_WINDOW -> CHANGE
                CueKind.END,
                CueKind.REST_OVER -> END
            }

        /** Between two pulses. */
        const val GAP_MS: Int = 120
    }
}

/** What the sound of a cue is to the system: guidance that other sound makes room for. */
internal val guidance: AudioAttributes =
    AudioAttributes.Builder()
        .setUsage(AudioAttributes.USAGE_ASSISTANCE_NAVIGATION_GUIDANCE)
        .setContentType(AudioAttributes.CONTENT_TYPE_SPEECH)
        .build()

/** Tones, made by sums and held ready, so that one starts on the millisecond and no file can be missing. */
internal open class Tones {
    private val tracks = mutableMapOf<Rhythm, AudioTrack>()

    /** Plays a rhythm. False where the phone gives no sound: haptic and speech are still there. */
    open fun play(rhythm: Rhythm): Boolean =
        try {
            val track = tracks.getOrPut(rhythm) { track(bytes(wave(rhythm))) }
            track.stop()
            track.reloadStaticData()
            track.play()
            true
        } catch (_: IllegalStateException) {
            tracks.remove(rhythm)?.release()
            false
        } catch (_: UnsupportedOperationException) {
            false
        }

    /** Lets go of what was held ready. */
    fun release() {
        tracks.values.forEach { it.release() }
        tracks.clear()
    }

    private fun track(wave: ByteArray): AudioTrack {
        val format =
            AudioFormat.Builder()
                .setSampleRate(RATE)
                .setEncoding(AudioFormat.ENCODING_PCM_16BIT)
                .setChannelMask(AudioFormat.CHANNEL_OUT_MONO)
                .build()
        val track =
            AudioTrack.Builder()
                .setAudioAttributes(guidance)
                .setAudioFormat(format)
                .setTransferMode(AudioTrack.MODE_STATIC)
                .setBufferSizeInBytes(wave.size)
                .build()
        track.write(wave, 0, wave.size)
        return track
    }

    /** As the sound hardware takes them. */
    private fun bytes(wave: ShortArray): ByteArray {
        val bytes = ByteBuffer.allocate(wave.size * Short.SIZE_BYTES).order(ByteOrder.nativeOrder())
        wave.forEach(bytes::putShort)
        return bytes.array()
    }

    companion object {
        private const val RATE = 22_050
        private const val EDGE_MS = 8

        /** A rhythm as sound. Each pulse swells and fades for a moment: an edge would click. */
        fun wave(rhythm: Rhythm): ShortArray {
            val pulse = RATE * rhythm.pulseMs / 1000
            val gap = RATE * Rhythm.GAP_MS / 1000
            val edge = RATE * EDGE_MS / 1000
            val wave = ShortArray(rhythm.pulses * pulse + (rhythm.pulses - 1) * gap)
            for (at in wave.indices) {
                val within = at % (pulse + gap)
                if (within >= pulse) continue
                val loud = min(1.0, min(within, pulse - within).toDouble() / edge)
                wave[at] = (sin(2 * PI * rhythm.hertz * within / RATE) * loud * LOUDEST).toInt().toShort()
            }
            return wave
        }

        private const val LOUDEST = 0.7 * Short.MAX_VALUE
    }
}

package holdfast.app

import android.content.Context
import android.media.AudioAttributes
import android.os.Build
import android.os.VibrationAttributes
import android.os.VibrationEffect
import android.os.Vibrator

/** Haptics: a pattern for each rhythm. */
internal class Pulses(context: Context) {
    private val vibrator = context.getSystemService(Vibrator::class.java)

    /** Gives a rhythm to the hand. A phone without a motor does nothing. */
    fun give(rhythm: Rhythm) {
        val vibrator = vibrator?.takeIf { it.hasVibrator() } ?: return
        val effect = VibrationEffect.createWaveform(pattern(rhythm), ONCE)
        // Android: in the background and in battery saver only the haptics of alarms are let through.
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            vibrator.vibrate(effect, VibrationAttributes.createForUsage(VibrationAttributes.USAGE_ALARM))
        } else {
            val alarm = AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).build()
            @Suppress("DEPRECATION") vibrator.vibrate(effect, alarm)
        }
    }

    companion object {
        private const val ONCE = -1

        /** Off and on in turn, in milliseconds, off first. */
        fun pattern(rhythm: Rhythm): LongArray =
            (0 until rhythm.pulses)
                .flatMap { listOf(if (it == 0) 0L else Rhythm.GAP_MS.toLong(), rhythm.pulseMs.toLong()) }
                .toLongArray()
    }
}

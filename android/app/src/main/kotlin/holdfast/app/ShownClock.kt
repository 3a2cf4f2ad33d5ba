package holdfast.app

import holdfast.core.ClockView
import holdfast.core.PieceKindView
import holdfast.core.SessionScreen
import kotlin.math.abs

/**
 * What a notification shows of the clock that counts. [endsAtBootMs] is when this phase ends by the boot
 * clock; null where it stands, or where nobody knows.
 */
internal data class ShownClock(
    val title: String,
    val about: String?,
    val endsAtBootMs: Long?,
    val isPaused: Boolean,
) {
    /** True for the same clock in the same phase, read at another moment. */
    fun isSameAs(other: ShownClock?): Boolean {
        if (other == null || copy(endsAtBootMs = null) != other.copy(endsAtBootMs = null)) return false
        val (own, others) = endsAtBootMs to other.endsAtBootMs
        return if (own == null || others == null) own == others else abs(own - others) < SAME_MS
    }

    private companion object {
        /** Between two readings of one clock lie as many milliseconds as its screen took to be made. */
        const val SAME_MS = 400L
    }
}

/** The clock that counts or stands, of whatever is on screen; null where none does. */
internal fun SessionScreen.shownClock(nowBootMs: Long): ShownClock? {
    val clock = (listOf(here.clock) + pieces.map { it.kind.clock }).firstOrNull { it != null && it.isOpen }
    if (clock != null) {
        val left = clock.left?.takeUnless { clock.paused }
        val about = clock.about ?: here.title.takeIf { clock == here.clock }
        return ShownClock(clock.now, about, left?.let { nowBootMs + it.inWholeMilliseconds }, clock.paused)
    }
    val resting = rest?.takeIf { it.cue != null } ?: return null
    return ShownClock(
        resting.words,
        resting.piece,
        resting.left?.let { nowBootMs + it.inWholeMilliseconds },
        false,
    )
}

/** A clock whose time is over counts on in the core, and needs nothing of the phone. */
private val ClockView.isOpen: Boolean
    get() = paused || runs && over == null

private val PieceKindView.clock: ClockView?
    get() =
        when (this) {
            is PieceKindView.Hold -> view.clock
            is PieceKindView.Interval -> view.clock
            else -> null
        }

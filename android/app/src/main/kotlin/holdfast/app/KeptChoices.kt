package holdfast.app

import android.content.Context
import holdfast.core.Heard
import holdfast.core.PhoneChoices
import holdfast.core.Shade
import holdfast.core.TextSize

/**
 * How somebody wants this phone to look and sound. What another version wrote and this one does not know is
 * as it comes.
 */
internal class KeptChoices(context: Context) {
    private val kept = context.getSharedPreferences("choices", Context.MODE_PRIVATE)

    /** What is chosen now. */
    var chosen: PhoneChoices
        get() =
            PhoneChoices(
                known(TextSize.entries, "text", TextSize.PHONE),
                known(Shade.entries, "shade", Shade.PHONE),
                known(Heard.entries, "heard", Heard.WORDS),
            )
        set(choices) {
            kept
                .edit()
                .putString("text", choices.text.name)
                .putString("shade", choices.shade.name)
                .putString("heard", choices.heard.name)
                .apply()
        }

    private fun <T : Enum<T>> known(all: List<T>, key: String, otherwise: T): T {
        val name = kept.getString(key, null)
        return all.firstOrNull { it.name == name } ?: otherwise
    }
}

package holdfast.kit

import holdfast.core.Field
import holdfast.core.HoldfastException
import holdfast.core.explain
import holdfast.core.uniffiEnsureInitialized
import java.nio.charset.CharacterCodingException

/** The error as a sentence to show: what is wrong, where, and what to do. */
public val HoldfastException.words: String
    get() = explain(this)

/** The app's library cannot be used: it is missing, or of another version than this code. */
public class LibraryUnusable(message: String, cause: Throwable) : Exception(message, cause)

/** Runs a call; text that is no Unicode, which the generated code cannot hand over, is the caller's error. */
internal inline fun <T> wellFormed(call: () -> T): T =
    try {
        call()
    } catch (_: CharacterCodingException) {
        throw HoldfastException.Invalid(Field.TEXT, "half a character is in it: write it again")
    }

/** Runs the first call into the library, which loads and checks it. */
internal fun <T> loaded(first: () -> T): T =
    try {
        // The generated code would load the library without holding it against its own checksums.
        uniffiEnsureInitialized()
        first()
    } catch (error: LinkageError) {
        val reason = generateSequence<Throwable>(error) { it.cause }.last().message.orEmpty()
        val said = if ("mismatch" in reason) "is of another version than the app" else "cannot be loaded"
        throw LibraryUnusable("Holdfast's library $said: install the app again. ($reason)", error)
    }

package holdfast.kit

import java.io.File
import java.util.concurrent.TimeUnit
import kotlin.test.assertTrue
import kotlinx.serialization.json.Json
import kotlinx.serialization.json.JsonArray
import kotlinx.serialization.json.jsonArray

/** What the checks of all three languages share. */
object Fixtures {
    private val folder = File(System.getProperty("holdfast.fixtures"))

    fun plan(): ByteArray = folder.resolve("small-plan.toml").readBytes()

    fun longerDay(): ByteArray =
        plan() + "\n".encodeToByteArray() + folder.resolve("longer-day.toml").readBytes()

    fun screens(): JsonArray =
        Json.parseToJsonElement(folder.resolve("screens.snap.json").readText()).jsonArray
}

/** Starts this JVM again with another main function; what it says goes into a file. */
fun child(
    main: String,
    vararg args: String,
    said: File,
    properties: Map<String, String> = emptyMap(),
): Process {
    val own = listOf("jna.library.path", "holdfast.fixtures").associateWith(System::getProperty)
    val flags = (own + properties).map { (name, value) -> "-D$name=$value" }
    val java = File(System.getProperty("java.home"), "bin/java").path
    val command = listOf(java, "-cp", System.getProperty("java.class.path")) + flags + main + args
    return ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said).start()
}

/** Waits for a process to end, but not for ever. */
fun Process.ends() {
    val ended = waitFor(60, TimeUnit.SECONDS)
    if (!ended) destroyForcibly()
    assertTrue(ended, "the process still runs after a minute")
}

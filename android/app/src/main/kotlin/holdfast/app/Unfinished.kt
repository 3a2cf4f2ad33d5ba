package holdfast.app

import java.io.File
import java.io.IOException
import org.json.JSONException
import org.json.JSONObject

/** What exchanges in the background could not do, until the next one can or somebody has read it. */
internal class Unfinished(private val file: File) {
    /** Notes how the last exchange with a carrier ended: a sentence, or null where it did all. */
    @Synchronized
    fun note(carrier: String, what: String?) {
        val all = read()
        if (what == null && !all.has(carrier)) return
        all.put(carrier, what)
        write(all)
    }

    /** What is to be said, one sentence a carrier; it is not said again. */
    @Synchronized
    fun take(): List<String> {
        val all = read()
        val said = all.keys().asSequence().map(all::getString).toList()
        file.delete()
        return said
    }

    private fun read(): JSONObject =
        try {
            JSONObject(file.readText())
        } catch (_: IOException) {
            JSONObject()
        } catch (_: JSONException) {
            JSONObject()
        }

    private fun write(all: JSONObject) {
        try {
            file.writeText(all.toString())
        } catch (_: IOException) {
            // A full disk. What waits to be exchanged still shows as waiting.
        }
    }
}

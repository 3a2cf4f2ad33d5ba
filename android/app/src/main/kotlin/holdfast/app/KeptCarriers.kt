package holdfast.app

import holdfast.ui.Bucket
import holdfast.ui.KeptCarrier
import holdfast.ui.Server
import java.io.File
import java.io.IOException
import org.json.JSONArray
import org.json.JSONException
import org.json.JSONObject

/**
 * A carrier as the file has it. [address] is a document tree or a server's: with a [user] a WebDAV server's,
 * with a [bucket] an S3-compatible one's. What is secret is not in it.
 */
internal data class StoredCarrier(
    val id: String,
    val place: String,
    val address: String,
    val user: String? = null,
    val bucket: Bucket? = null,
) {
    val isServer: Boolean
        get() = user != null || bucket != null

    /** The server, with what was kept apart. */
    fun server(secret: String): Server =
        bucket?.let { Server.S3(address, it, secret) } ?: Server.WebDav(address, user.orEmpty(), secret)

    /** As the screens show it. */
    fun kept(): KeptCarrier = KeptCarrier(id, place, isServer)
}

/** The carriers that are kept on this phone, in the order they were added: a file of JSON. */
internal class KeptCarriers(private val file: File, private val damaged: () -> Unit) {
    /** All of them. A file that cannot be read is moved aside, and somebody is told. */
    @Synchronized
    fun all(): List<StoredCarrier> {
        val text =
            try {
                file.readText()
            } catch (_: IOException) {
                return emptyList()
            }
        try {
            val array = JSONArray(text)
            return (0 until array.length()).map { carrier(array.getJSONObject(it)) }
        } catch (_: JSONException) {
            file.renameTo(File("${file.path}.damaged"))
            damaged()
            return emptyList()
        }
    }

    /** Adds one, in the place of one with the same id. */
    @Synchronized
    fun add(carrier: StoredCarrier) {
        write(all().filter { it.id != carrier.id } + carrier)
    }

    /** Takes one away. */
    @Synchronized
    fun remove(id: String) {
        write(all().filter { it.id != id })
    }

    private fun write(carriers: List<StoredCarrier>) {
        val array = JSONArray(carriers.map(::json))
        val part = File("${file.path}.part")
        part.outputStream().use {
            it.write(array.toString().toByteArray())
            it.fd.sync()
        }
        if (!part.renameTo(file)) throw IOException(file.path)
    }

    private fun carrier(json: JSONObject) =
        StoredCarrier(
            json.getString("id"),
            json.getString("place"),
            json.getString("address"),
            if (json.has("user")) json.getString("user") else null,
            json.optJSONObject("bucket")?.let {
                Bucket(
                    it.getString("name"),
                    it.getString("region"),
                    it.getString("folder"),
                    it.getString("key-id"),
                )
            },
        )

    private fun json(carrier: StoredCarrier) =
        JSONObject().put("id", carrier.id).put("place", carrier.place).put("address", carrier.address).apply {
            carrier.user?.let { put("user", it) }
            carrier.bucket?.let {
                val bucket = JSONObject().put("name", it.name).put("region", it.region)
                put("bucket", bucket.put("folder", it.folder).put("key-id", it.keyId))
            }
        }
}

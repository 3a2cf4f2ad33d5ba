package holdfast.ui

import holdfast.core.Heard
import holdfast.core.PhoneChoices
import holdfast.core.Restore
import holdfast.core.Shade
import holdfast.core.Start
import holdfast.core.TextSize
import holdfast.kit.Carrier
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import java.io.File
import java.io.IOException
import kotlinx.coroutines.CompletableDeferred

/** A phone of folders: what somebody would choose, scan or type is set before. */
internal class TestPhone(private val home: File, private val clock: DeviceClock, seed: Int = 3) : Phone {
    var folder: File? = null
    var code: String? = null
    var file: ChosenFile? = null
    var full = false
    /** A folder that cannot be reached, while others can. */
    var away: File? = null
    /** The server that was kept last. */
    var server: Server? = null
    private val kept = mutableListOf<KeptCarrier>()
    private var drawn = seed

    override suspend fun open(): Host? =
        if (File(home, "device.json").exists()) Host.open(home.path, clock) else null

    override suspend fun start(start: Start): Host = Host.start(home.path, start, clock)

    override suspend fun restore(found: Restore): Host = Host.restore(home.path, found, chance(96), clock)

    override fun chance(count: Int): ByteArray {
        drawn += 1
        return ByteArray(count) { (drawn * 41 + it * 7).toByte() }
    }

    override suspend fun carriers(): List<KeptCarrier> = kept.toList()

    override suspend fun keepFolder(): KeptCarrier? =
        folder?.let { KeptCarrier(it.path, it.name, isServer = false) }?.also { kept += it }

    override suspend fun keepServer(server: Server): KeptCarrier {
        this.server = server
        return KeptCarrier(server.address, server.address, isServer = true).also { kept += it }
    }

    override suspend fun forget(carrier: KeptCarrier) {
        kept.remove(carrier)
    }

    override suspend fun reach(carrier: KeptCarrier): Carrier {
        waits?.await()
        if (full || carrier.id == away?.path)
            throw IOException("No connection to ${carrier.place}. Try again later.")
        return FolderCarrier(File(carrier.id))
    }

    override suspend fun scan(): String? = code

    override suspend fun chooseFile(): ChosenFile? = file

    private var chosen = PhoneChoices(TextSize.PHONE, Shade.PHONE, Heard.WORDS)

    /** What a carrier waits for before it answers; null for one that answers at once. */
    var waits: CompletableDeferred<Unit>? = null

    /** Cues that were given to try them. */
    var tried: Int = 0

    override fun choices(): PhoneChoices = chosen

    override fun choose(choices: PhoneChoices) {
        chosen = choices
    }

    override suspend fun tryCue() {
        tried++
    }

    override suspend fun share(file: ChosenFile): Unit = Unit
}

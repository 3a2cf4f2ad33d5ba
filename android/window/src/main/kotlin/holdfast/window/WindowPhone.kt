package holdfast.window

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.FailedFile
import holdfast.core.Heard
import holdfast.core.ListedFile
import holdfast.core.PhoneChoices
import holdfast.core.Restore
import holdfast.core.Shade
import holdfast.core.Start
import holdfast.core.TextSize
import holdfast.kit.Carrier
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import holdfast.ui.ChosenFile
import holdfast.ui.KeptCarrier
import holdfast.ui.Phone
import holdfast.ui.Server
import java.awt.FileDialog
import java.awt.Frame
import java.awt.Toolkit
import java.io.File
import java.io.IOException
import java.nio.file.Files
import java.nio.file.StandardCopyOption
import java.security.SecureRandom
import javax.swing.JFileChooser
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** What a desktop can do for the screens: folders and files by its own choosers. It has no camera. */
internal class WindowPhone(private val home: File, private val clock: DeviceClock) : Phone {
    /** One line a folder. */
    private val kept = File(home, "carriers.window")

    override suspend fun open(): Host? =
        if (File(home, "device.json").isFile) Host.open(home.path, clock) else null

    override suspend fun start(start: Start): Host = Host.start(home.path, start, clock)

    override suspend fun restore(found: Restore): Host = Host.restore(home.path, found, chance(96), clock)

    override fun chance(count: Int): ByteArray = ByteArray(count).also { SecureRandom().nextBytes(it) }

    override suspend fun carriers(): List<KeptCarrier> =
        if (kept.isFile) kept.readLines().filter { it.isNotBlank() }.map { kept(File(it)) } else emptyList()

    override suspend fun keepFolder(): KeptCarrier? {
        val chooser = JFileChooser().apply { fileSelectionMode = JFileChooser.DIRECTORIES_ONLY }
        if (chooser.showOpenDialog(null) != JFileChooser.APPROVE_OPTION) return null
        // A log that comes back has a carrier before it has a home.
        home.mkdirs()
        return kept(chooser.selectedFile).also { kept.appendText(it.id + "\n") }
    }

    override suspend fun keepServer(server: Server): KeptCarrier =
        throw IOException("This window exchanges with folders. A server is kept by the desk's own program.")

    override suspend fun forget(carrier: KeptCarrier) {
        kept.writeText(carriers().filter { it.id != carrier.id }.joinToString("") { it.id + "\n" })
    }

    override suspend fun reach(carrier: KeptCarrier): Carrier = Folder(File(carrier.id))

    override suspend fun scan(): String? =
        throw IOException("This window has no camera. Type the code, or paste it.")

    override suspend fun chooseFile(): ChosenFile? {
        val dialog = FileDialog(null as Frame?).apply { isVisible = true }
        val file = dialog.files.firstOrNull() ?: return null
        return withContext(Dispatchers.IO) { ChosenFile(file.name, file.readBytes()) }
    }

    private var chosen = PhoneChoices(TextSize.PHONE, Shade.PHONE, Heard.WORDS)

    /** As long as the window is open. */
    override fun choices(): PhoneChoices = chosen

    override fun choose(choices: PhoneChoices) {
        chosen = choices
    }

    /** A desktop has a bell alone. */
    override suspend fun tryCue(): Unit = Toolkit.getDefaultToolkit().beep()

    override suspend fun share(file: ChosenFile) {
        val dialog = FileDialog(null as Frame?, file.name, FileDialog.SAVE).apply { isVisible = true }
        dialog.files.firstOrNull()?.writeBytes(file.content)
    }

    private fun kept(folder: File) = KeptCarrier(folder.path, folder.name, isServer = false)
}

/** A folder of this machine as a carrier. */
private class Folder(private val folder: File) : Carrier {
    private suspend fun <T> reading(act: () -> T): T =
        withContext(Dispatchers.IO) {
            if (!folder.isDirectory)
                throw IOException("${folder.path} is not there. Choose the folder again.")
            act()
        }

    override suspend fun list(): List<ListedFile> = reading {
        folder
            .listFiles()
            .orEmpty()
            .filter { it.isFile && !it.name.startsWith(".") }
            .map { ListedFile(it.name, it.length().toULong()) }
    }

    override suspend fun get(names: List<String>): ExchangeDid.Got = reading {
        val (files, unread) = mutableListOf<CarriedFile>() to mutableListOf<FailedFile>()
        for (file in names.map { File(folder, it) }.filter { it.exists() }) {
            try {
                files += CarriedFile(file.name, file.readBytes())
            } catch (error: IOException) {
                unread += FailedFile(file.name, error.message.orEmpty())
            }
        }
        ExchangeDid.Got(files, unread)
    }

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put = reading {
        val unwritten = mutableListOf<FailedFile>()
        var written = 0u
        for (file in files) {
            try {
                if (put(file)) written += 1u
            } catch (error: IOException) {
                unwritten += FailedFile(file.name, error.message.orEmpty())
            }
        }
        ExchangeDid.Put(written, unwritten)
    }

    /** Under its name stands all of it or nothing: what is half written has another name. */
    private fun put(file: CarriedFile): Boolean {
        val there = File(folder, file.name)
        if (there.length() == file.content.size.toLong()) return false
        val half = File.createTempFile(".half", ".tmp", folder)
        half.writeBytes(file.content)
        Files.move(half.toPath(), there.toPath(), StandardCopyOption.ATOMIC_MOVE)
        return true
    }
}

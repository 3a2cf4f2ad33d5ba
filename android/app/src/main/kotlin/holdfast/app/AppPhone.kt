package holdfast.app

import android.Manifest
import android.content.ClipData
import android.content.Context
import android.content.Intent
import android.net.Network
import android.net.Uri
import android.provider.DocumentsContract
import android.provider.OpenableColumns
import holdfast.core.PhoneChoices
import holdfast.core.PlatformTrouble
import holdfast.core.Restore
import holdfast.core.Server as CoreServer
import holdfast.core.Start
import holdfast.core.platformTrouble
import holdfast.core.platformWords
import holdfast.kit.Carrier
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import holdfast.ui.ChosenFile
import holdfast.ui.KeptCarrier
import holdfast.ui.Phone
import holdfast.ui.Server
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException
import java.security.MessageDigest
import java.security.SecureRandom
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.asStateFlow
import kotlinx.coroutines.sync.Mutex
import kotlinx.coroutines.sync.withLock
import kotlinx.coroutines.withContext

/** What Android gives the screens. One a process. */
internal class AppPhone(
    private val context: Context,
    private val clock: DeviceClock,
    private val keystore: Keystore,
    private val asking: Asking,
    private val giveCue: () -> Unit = {},
    tell: (String) -> Unit,
) : Phone {
    private val keptChoices = KeptChoices(context)
    private val random = SecureRandom()
    private val opening = Mutex()
    private val opened = MutableStateFlow<Host?>(null)
    private val kept =
        KeptCarriers(File(context.filesDir, "carriers.json")) { tell(platformWords().carriersDamaged) }

    // Android: left out of every backup, so no second phone writes the journal of this one.
    private val home = File(context.noBackupFilesDir, "home")

    /** The host, once it is open. */
    val host: StateFlow<Host?> = opened.asStateFlow()

    override suspend fun open(): Host? =
        opening.withLock {
            opened.value?.let {
                return it
            }
            if (!File(home, "device.json").exists()) return null
            val key = withContext(Dispatchers.IO) { keystore.key() }
            Host.open(home.path, clock, keystore = key).also { opened.value = it }
        }

    override suspend fun start(start: Start): Host =
        opening.withLock {
            val key = withContext(Dispatchers.IO) { keystore.begin() }
            Host.start(home.path, start, clock, keystore = key).also { opened.value = it }
        }

    override suspend fun restore(found: Restore): Host =
        opening.withLock {
            val key = withContext(Dispatchers.IO) { keystore.begin() }
            Host.restore(home.path, found, chance(CHANCE), clock, keystore = key).also { opened.value = it }
        }

    override fun choices(): PhoneChoices = keptChoices.chosen

    override fun choose(choices: PhoneChoices) {
        keptChoices.chosen = choices
    }

    override suspend fun tryCue(): Unit = giveCue()

    override fun chance(count: Int): ByteArray = ByteArray(count).also(random::nextBytes)

    override suspend fun carriers(): List<KeptCarrier> = stored().map { it.kept() }

    override suspend fun keepFolder(): KeptCarrier? {
        val answer = asking.ask(Intent(Intent.ACTION_OPEN_DOCUMENT_TREE).addFlags(LASTING)) ?: return null
        val tree = answer.data ?: return null
        return stores {
            context.contentResolver.takePersistableUriPermission(tree, READ_AND_WRITE)
            val stored = StoredCarrier(idOf(tree.toString()), nameOf(tree), tree.toString())
            kept.add(stored)
            stored.kept()
        }
    }

    override suspend fun keepServer(server: Server): KeptCarrier = stores {
        // What cannot be is refused by the core, with what is wanted.
        val place = checked(server).use { it.place() }
        val id = idOf(place)
        val stored =
            when (server) {
                is Server.WebDav -> StoredCarrier(id, place, server.address, user = server.user)
                is Server.S3 -> StoredCarrier(id, place, server.address, bucket = server.bucket)
            }
        keystore.keep(secretOf(id), server.secret.toByteArray())
        kept.add(stored)
        stored.kept()
    }

    override suspend fun forget(carrier: KeptCarrier): Unit =
        withContext(Dispatchers.IO) {
            val stored = kept.all().firstOrNull { it.id == carrier.id } ?: return@withContext
            kept.remove(stored.id)
            keystore.forget(secretOf(stored.id))
            if (stored.isServer) return@withContext
            try {
                context.contentResolver.releasePersistableUriPermission(
                    Uri.parse(stored.address),
                    READ_AND_WRITE,
                )
            } catch (_: SecurityException) {
                // Withdrawn before.
            }
        }

    override suspend fun reach(carrier: KeptCarrier): Carrier = reach(carrier.id, null)

    /** The same over a network that a job was given. */
    suspend fun reach(id: String, network: Network?): Carrier =
        withContext(Dispatchers.IO) {
            val stored = kept.all().first { it.id == id }
            if (!stored.isServer) return@withContext folder(stored)
            val secret =
                keystore.open(secretOf(id))
                    ?: throw Carried(platformTrouble(PlatformTrouble.PasswordGone(stored.place)))
            ServerCarrier(checked(stored.server(String(secret))), HttpSender(network), clock) { folders ->
                host.value?.ask { now -> toLookInto(stored.place, folders, now) } ?: folders
            }
        }

    /** All that is kept, with addresses. */
    suspend fun stored(): List<StoredCarrier> = withContext(Dispatchers.IO) { kept.all() }

    override suspend fun scan(): String? {
        if (!asking.permission(Manifest.permission.CAMERA)) throw Carried(platformWords().noCameraRight)
        val answer = asking.ask(Intent(context, ScanActivity::class.java)) ?: return null
        answer.getStringExtra(ScanActivity.TROUBLE)?.let { throw Carried(it) }
        return answer.getStringExtra(ScanActivity.TEXT)
    }

    override suspend fun chooseFile(): ChosenFile? {
        val open = Intent(Intent.ACTION_OPEN_DOCUMENT).addCategory(Intent.CATEGORY_OPENABLE).setType("*/*")
        val file = asking.ask(open)?.data ?: return null
        return withContext(Dispatchers.IO) { chosen(file) }
    }

    override suspend fun share(file: ChosenFile) {
        val uri = withContext(Dispatchers.IO) { SharedFiles.put(context, file) }
        val send =
            Intent(Intent.ACTION_SEND)
                .setType(SharedFiles.typeOf(file.name))
                .putExtra(Intent.EXTRA_STREAM, uri)
                .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        // Android: the right to read goes along with the clip, also through the system's chooser.
        send.clipData = ClipData.newRawUri(file.name, uri)
        asking.start(Intent.createChooser(send, null), platformWords().noReceiver)
    }

    /** Writes something on the phone itself. */
    private suspend fun <T> stores(act: () -> T): T =
        withContext(Dispatchers.IO) {
            try {
                act()
            } catch (error: IOException) {
                throw if (TreeFolder.isFull(error)) Carried(platformWords().phoneFull, error) else error
            }
        }

    private fun folder(stored: StoredCarrier): Carrier {
        val tree = Uri.parse(stored.address)
        val granted = context.contentResolver.persistedUriPermissions
        // Android: the right is lost with the folder's app, or when somebody takes it back in the settings.
        if (granted.none { it.uri == tree && it.isReadPermission && it.isWritePermission }) {
            throw Carried(platformTrouble(PlatformTrouble.FolderGone(stored.place)))
        }
        return TreeFolder(context.contentResolver, tree, stored.place)
    }

    private fun chosen(file: Uri): ChosenFile {
        val name = nameOf(file, OpenableColumns.DISPLAY_NAME) ?: file.lastPathSegment.orEmpty()
        val content =
            try {
                (context.contentResolver.openInputStream(file) ?: throw FileNotFoundException(name)).use {
                    it.upTo(MOST_PLAN_BYTES + 1)
                }
            } catch (error: IOException) {
                throw Carried(platformTrouble(PlatformTrouble.FileUnreadable(name)), error)
            } catch (error: SecurityException) {
                throw Carried(platformTrouble(PlatformTrouble.FileUnreadable(name)), error)
            }
        if (content.size > MOST_PLAN_BYTES) throw Carried(platformTrouble(PlatformTrouble.FileLarge(name)))
        return ChosenFile(name, content)
    }

    private fun nameOf(tree: Uri): String {
        val root = DocumentsContract.getTreeDocumentId(tree)
        val document = DocumentsContract.buildDocumentUriUsingTree(tree, root)
        return nameOf(document, DocumentsContract.Document.COLUMN_DISPLAY_NAME) ?: root
    }

    private fun nameOf(uri: Uri, column: String): String? =
        try {
            context.contentResolver.query(uri, arrayOf(column), null, null, null)?.use {
                if (it.moveToFirst()) it.getString(0) else null
            }
        } catch (_: RuntimeException) {
            // Android: a provider's own fault crosses as whatever it is; a name is worth no failure.
            null
        }

    /** The server as the core has it. */
    private fun checked(server: Server): CoreServer {
        val chance = random.nextInt(Int.MAX_VALUE).toUInt()
        return when (server) {
            is Server.WebDav -> CoreServer.webdav(server.address, server.user, server.secret, chance)
            is Server.S3 -> {
                val (bucket, region, folder, keyId) = server.bucket
                CoreServer.s3(server.address, bucket, region, folder, keyId, server.secret, chance)
            }
        }
    }

    private companion object {
        const val READ_AND_WRITE =
            Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION
        const val LASTING = READ_AND_WRITE or Intent.FLAG_GRANT_PERSISTABLE_URI_PERMISSION

        /** No plan is larger: a year of days has a tenth of it. */
        const val MOST_PLAN_BYTES = 1024 * 1024

        /** Bytes of chance that keys and identities are made of. */
        const val CHANCE = 96

        /** The same folder or server is kept once. */
        fun idOf(address: String): String =
            MessageDigest.getInstance("SHA-256").digest(address.toByteArray()).take(8).joinToString("") {
                "%02x".format(it)
            }

        fun secretOf(id: String) = "password-$id"
    }
}

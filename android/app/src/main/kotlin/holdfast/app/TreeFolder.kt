package holdfast.app

import android.content.ContentResolver
import android.net.Uri
import android.system.ErrnoException
import android.system.OsConstants
import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.FailedFile
import holdfast.core.ListedFile
import holdfast.core.PlatformTrouble
import holdfast.core.platformTrouble
import holdfast.core.platformWords
import holdfast.kit.Carrier
import java.io.FileNotFoundException
import java.io.IOException
import java.security.MessageDigest
import kotlin.random.Random
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.currentCoroutineContext
import kotlinx.coroutines.delay
import kotlinx.coroutines.ensureActive
import kotlinx.coroutines.withContext

/** What keeps a carrier from its files, as a sentence that says what to do. */
internal class Carried(sentence: String, cause: Throwable? = null) : IOException(sentence, cause)

/**
 * A folder that somebody chose, as a carrier: all files in it side by side, as in a folder of a laptop.
 *
 * Android: nothing replaces a file in one step, and a name that is taken becomes `name (1)`. Our names belong
 * to one content each, so nothing needs replacing: a file is written under a name that every reader knows as
 * temporary, and gets its own when it is whole.
 */
internal class TreeFolder(resolver: ContentResolver, tree: Uri, private val place: String) : Carrier {
    private val tree = Tree(resolver, tree)
    private var known: Map<String, TreeFile> = emptyMap()

    override suspend fun list(): List<ListedFile> = told {
        look()
        known.values.map { ListedFile(it.name, it.bytes.toULong()) }
    }

    override suspend fun get(names: List<String>): ExchangeDid.Got = told {
        val files = mutableListOf<CarriedFile>()
        val unread = mutableListOf<FailedFile>()
        for (name in names) {
            currentCoroutineContext().ensureActive()
            val id = known[name]?.id ?: continue
            try {
                files += CarriedFile(name, tree.read(id, MOST_BYTES + 1))
            } catch (_: FileNotFoundException) {
                // Gone since it was listed: a later listing has it again, or not.
            } catch (error: IOException) {
                unread += FailedFile(name, said(error))
            }
        }
        ExchangeDid.Got(files, unread)
    }

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put = told {
        var written = 0u
        val unwritten = mutableListOf<FailedFile>()
        look()
        for (file in files) {
            currentCoroutineContext().ensureActive()
            try {
                if (put(file)) written += 1u
            } catch (error: IOException) {
                if (isFull(error)) throw error
                unwritten += FailedFile(file.name, said(error))
            } catch (error: IllegalArgumentException) {
                // Android: what a provider cannot do may come back as this.
                unwritten += FailedFile(file.name, said(error))
            }
        }
        ExchangeDid.Put(written, unwritten)
    }

    /** Writes a file unless it is there as it is; false where it was. */
    private suspend fun put(file: CarriedFile): Boolean {
        val there = known[file.name]
        // What has the right size may have rotted, so it is read.
        if (there != null && isThere(there, file.content)) return false
        val made = tree.create(".${file.name}.${Random.nextInt(TURNS)}.tmp")
        var own = made.id
        try {
            tree.write(own, file.content)
            if (!isThere(tree.look(own), file.content)) throw IOException(platformWords().fileTorn)
            // What was torn on its way has our name, and other bytes.
            if (there != null) tree.delete(there.id)
            val named = if (made.canBeRenamed) tree.rename(own, file.name) else again(own, file)
            own = named.id
            if (named.name == file.name && isThere(named, file.content)) {
                known = known + (file.name to named)
                return true
            }
        } catch (error: Exception) {
            tree.delete(own)
            throw error
        }
        // Somebody else took the name meanwhile, and ours came out as another one: ours goes, and theirs is
        // looked at.
        tree.delete(own)
        look()
        if (isThere(known[file.name], file.content)) return false
        throw IOException(platformWords().fileTorn)
    }

    /** Where nothing can be renamed: once more, under the name itself. */
    private fun again(temporary: String, file: CarriedFile): TreeFile {
        tree.delete(temporary)
        val made = tree.create(file.name)
        try {
            tree.write(made.id, file.content)
        } catch (error: IOException) {
            tree.delete(made.id)
            throw error
        }
        return tree.look(made.id) ?: throw FileNotFoundException(file.name)
    }

    private fun isThere(there: TreeFile?, content: ByteArray): Boolean {
        if (there == null || there.bytes != content.size.toLong()) return false
        return sha256(tree.read(there.id, content.size + 1)).contentEquals(sha256(content))
    }

    private suspend fun look() {
        repeat(LOADS) {
            try {
                return list(tree.list())
            } catch (_: StillLoading) {
                delay(LOAD_MS)
            }
        }
        throw Carried(platformTrouble(PlatformTrouble.FolderLoading(place)))
    }

    private fun list(files: List<TreeFile>) {
        known = files.associateBy { it.name }
    }

    /** Off the main thread; what ends the exchange is said as a sentence. */
    private suspend fun <T> told(act: suspend () -> T): T =
        withContext(Dispatchers.IO) {
            try {
                act()
            } catch (error: Carried) {
                throw error
            } catch (error: SecurityException) {
                throw Carried(platformTrouble(PlatformTrouble.FolderGone(place)), error)
            } catch (error: IOException) {
                val trouble =
                    when {
                        // Android: a file that cannot be opened for want of room is "not found" to whoever
                        // asked.
                        isFull(error) -> PlatformTrouble.FolderFull(place)
                        error is FileNotFoundException -> PlatformTrouble.FolderGone(place)
                        else -> PlatformTrouble.FolderRefused(place, said(error))
                    }
                throw Carried(platformTrouble(trouble), error)
            }
        }

    private fun said(error: Exception): String = error.message ?: error.javaClass.simpleName

    companion object {
        /** The largest file that is of use: a leaf's largest size. */
        const val MOST_BYTES: Int = 4 * 1024 * 1024

        private const val TURNS = 1_000_000
        private const val LOADS = 5
        private const val LOAD_MS = 800L

        /** True where the disk said that it has no room. */
        fun isFull(error: Throwable): Boolean =
            generateSequence(error) { it.cause }
                .any { cause ->
                    val errno = (cause as? ErrnoException)?.errno
                    errno == OsConstants.ENOSPC ||
                        errno == OsConstants.EDQUOT ||
                        // Android: a provider's own exception crosses as its text.
                        listOf("ENOSPC", "EDQUOT", "No space left").any { it in cause.message.orEmpty() }
                }

        private fun sha256(bytes: ByteArray) = MessageDigest.getInstance("SHA-256").digest(bytes)
    }
}

package holdfast.app

import android.content.ContentResolver
import android.database.Cursor
import android.net.Uri
import android.os.Bundle
import android.os.ParcelFileDescriptor
import android.provider.DocumentsContract
import android.provider.DocumentsContract.Document
import java.io.FileNotFoundException
import java.io.IOException

/** A document in a folder, with the id that its provider gave it. An id is good for one run only. */
internal class TreeFile(val id: String, val name: String, val bytes: Long, val flags: Int) {
    val canBeRenamed: Boolean
        get() = flags and Document.FLAG_SUPPORTS_RENAME != 0
}

/**
 * The listing is short because the provider is still loading. What is missing comes later, and is not gone.
 */
internal class StillLoading : IOException()

/**
 * The calls to a document tree that a carrier needs, and nothing above them.
 *
 * Android: DocumentFile asks the provider again for each property of each file, so this asks once for all.
 */
internal class Tree(private val resolver: ContentResolver, private val tree: Uri) {
    private val root: String = DocumentsContract.getTreeDocumentId(tree)

    /** The plain files of the folder, in one query. Folders in it are not looked into. */
    fun list(): List<TreeFile> {
        val children = DocumentsContract.buildChildDocumentsUriUsingTree(tree, root)
        val files = mutableListOf<TreeFile>()
        query(children).use { rows ->
            while (rows.moveToNext()) {
                if (rows.getString(MIME) != Document.MIME_TYPE_DIR) files += rows.file()
            }
            if (rows.extras?.getBoolean(DocumentsContract.EXTRA_LOADING) == true) throw StillLoading()
            rows.extras?.getString(DocumentsContract.EXTRA_ERROR)?.let { throw IOException(it) }
        }
        return files
    }

    /** What the provider has of one document now; null where it is gone. */
    fun look(id: String): TreeFile? =
        try {
            query(at(id)).use { if (it.moveToFirst()) it.file() else null }
        } catch (_: FileNotFoundException) {
            null
        }

    /** Reads a document, at most so many bytes. */
    fun read(id: String, most: Int): ByteArray =
        (resolver.openInputStream(at(id)) ?: throw FileNotFoundException(id)).use { it.upTo(most) }

    /** Makes an empty document; the provider may choose another name than this. */
    fun create(name: String): TreeFile {
        // Android: a type that does not fit the ending gets another ending; this one leaves names alone.
        val made = DocumentsContract.createDocument(resolver, at(root), "application/octet-stream", name)
        return look(id(made ?: throw IOException(name))) ?: throw FileNotFoundException(name)
    }

    /** Fills a document, and waits until it is on the disk, where the provider has one. */
    fun write(id: String, content: ByteArray) {
        val opened = resolver.openFileDescriptor(at(id), "w") ?: throw FileNotFoundException(id)
        opened.use { descriptor ->
            ParcelFileDescriptor.AutoCloseOutputStream(descriptor).use {
                it.write(content)
                it.flush()
                try {
                    it.fd.sync()
                } catch (_: java.io.SyncFailedException) {
                    // A provider that hands out a pipe has no disk to wait for.
                }
            }
        }
    }

    /** Renames a document and gives what it is then: its id is a new one, and its name may be another one. */
    fun rename(id: String, name: String): TreeFile {
        val renamed = DocumentsContract.renameDocument(resolver, at(id), name)
        // Android: null says that the id stayed as it was.
        return look(renamed?.let(::id) ?: id) ?: throw FileNotFoundException(name)
    }

    /** Deletes a document, as far as the provider lets us. */
    fun delete(id: String): Boolean =
        try {
            DocumentsContract.deleteDocument(resolver, at(id))
        } catch (_: FileNotFoundException) {
            true
        } catch (_: RuntimeException) {
            // Android: what a provider does not support comes as whatever it threw.
            false
        }

    private fun query(uri: Uri): Cursor =
        resolver.query(uri, COLUMNS, null as Bundle?, null) ?: throw FileNotFoundException(uri.toString())

    private fun Cursor.file() =
        TreeFile(
            getString(ID),
            getString(NAME).orEmpty(),
            if (isNull(SIZE)) 0 else getLong(SIZE),
            getInt(FLAGS),
        )

    private fun at(id: String): Uri = DocumentsContract.buildDocumentUriUsingTree(tree, id)

    private fun id(uri: Uri): String = DocumentsContract.getDocumentId(uri)

    private companion object {
        // Android: the local provider works out only what is asked for, so the date is left out.
        val COLUMNS: Array<String> =
            arrayOf(
                Document.COLUMN_DOCUMENT_ID,
                Document.COLUMN_DISPLAY_NAME,
                Document.COLUMN_SIZE,
                Document.COLUMN_FLAGS,
                Document.COLUMN_MIME_TYPE,
            )
        const val ID = 0
        const val NAME = 1
        const val SIZE = 2
        const val FLAGS = 3
        const val MIME = 4
    }
}

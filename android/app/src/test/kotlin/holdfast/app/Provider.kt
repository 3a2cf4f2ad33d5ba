package holdfast.app

import android.content.ContentProvider
import android.content.ContentValues
import android.content.pm.ProviderInfo
import android.database.Cursor
import android.net.Uri
import android.os.Bundle
import android.os.CancellationSignal
import android.os.ParcelFileDescriptor
import android.provider.DocumentsContract
import android.provider.MediaStore
import com.android.internal.content.FileSystemProvider
import java.io.File
import java.io.FileNotFoundException
import org.robolectric.Robolectric
import org.robolectric.android.controller.ContentProviderController
import org.robolectric.shadows.ShadowContentResolver

/** Takes in what it is told, and answers with nothing. */
private class Media : ContentProvider() {
    override fun onCreate() = true

    override fun call(method: String, argument: String?, extras: Bundle?) = Bundle()

    override fun query(
        u: Uri,
        c: Array<out String>?,
        s: String?,
        a: Array<out String>?,
        o: String?,
    ): Cursor? = null

    override fun getType(uri: Uri): String? = null

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null

    override fun delete(uri: Uri, selection: String?, arguments: Array<out String>?) = 0

    override fun update(u: Uri, v: ContentValues?, s: String?, a: Array<out String>?) = 0
}

/**
 * A folder behind Android's own provider of local files: its way of choosing free names and of renaming is
 * the real one. Tests take rights and room away from it.
 */
class LocalFiles : FileSystemProvider() {
    override fun onCreate(): Boolean {
        // What it gives when nothing is asked for in particular.
        onCreate(arrayOf(DocumentsContract.Document.COLUMN_DOCUMENT_ID))
        return true
    }

    override fun getFileForDocId(id: String, visible: Boolean): File {
        if (!isAllowed) throw SecurityException("the right was withdrawn")
        val file = File(root.parentFile, id)
        if (!file.exists()) throw FileNotFoundException(id)
        return file
    }

    override fun getDocIdForFile(file: File): String = file.relativeTo(root.parentFile!!).path

    override fun buildNotificationUri(id: String): Uri = DocumentsContract.buildDocumentUri(AUTHORITY, id)

    override fun queryRoots(projection: Array<out String>?): Cursor? = null

    override fun queryChildDocuments(id: String, columns: Array<out String>?, order: String?): Cursor {
        queries += 1
        val rows = super.queryChildDocuments(id, columns, order)
        if (loads > 0) {
            loads -= 1
            rows.extras = Bundle().apply { putBoolean(DocumentsContract.EXTRA_LOADING, true) }
        }
        return rows
    }

    override fun openDocument(id: String, mode: String, signal: CancellationSignal?): ParcelFileDescriptor {
        if ("w" in mode && full) {
            throw FileNotFoundException("open failed: ENOSPC (No space left on device)")
        }
        return super.openDocument(id, mode, signal)
    }

    override fun renameDocument(id: String, name: String): String? {
        beforeRename(name)
        return super.renameDocument(id, name)
    }

    companion object {
        const val AUTHORITY = "holdfast.test.files"
        lateinit var root: File
        var isAllowed = true
        var full = false
        var loads = 0
        var queries = 0
        var beforeRename: (String) -> Unit = {}

        /** Registers it over a folder, and gives the tree that somebody chose. */
        fun over(folder: File): Uri {
            root = folder
            isAllowed = true
            full = false
            loads = 0
            queries = 0
            beforeRename = {}
            val info =
                ProviderInfo().apply {
                    authority = AUTHORITY
                    exported = true
                    grantUriPermissions = true
                    readPermission = "android.permission.MANAGE_DOCUMENTS"
                    writePermission = "android.permission.MANAGE_DOCUMENTS"
                }
            val made: ContentProviderController<LocalFiles> =
                Robolectric.buildContentProvider(LocalFiles::class.java)
            made.create(info)
            // Android's provider tells the media library of each file. There is none here to answer.
            ShadowContentResolver.registerProviderInternal(MediaStore.AUTHORITY, Media())
            return DocumentsContract.buildTreeDocumentUri(AUTHORITY, folder.name)
        }
    }
}

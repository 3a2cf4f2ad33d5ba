package holdfast.app

import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import holdfast.ui.ChosenFile
import java.io.File
import java.io.FileNotFoundException

/** Hands out the one file that is being shared, to be read by whoever was given the right to. */
internal class SharedFiles : ContentProvider() {
    override fun onCreate(): Boolean = true

    override fun getType(uri: Uri): String = typeOf(file(uri).name)

    override fun query(
        uri: Uri,
        columns: Array<out String>?,
        selection: String?,
        arguments: Array<out String>?,
        order: String?,
    ): Cursor {
        val file = file(uri)
        val asked = columns ?: arrayOf(OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE)
        val row = MatrixCursor(asked).newRowIn()
        for (column in asked) {
            when (column) {
                OpenableColumns.DISPLAY_NAME -> row.second.add(column, file.name)
                OpenableColumns.SIZE -> row.second.add(column, file.length())
            }
        }
        return row.first
    }

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        if (mode != "r") throw SecurityException(mode)
        return ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.MODE_READ_ONLY)
    }

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null

    override fun update(
        uri: Uri,
        values: ContentValues?,
        selection: String?,
        arguments: Array<out String>?,
    ): Int = 0

    override fun delete(uri: Uri, selection: String?, arguments: Array<out String>?): Int = 0

    private fun MatrixCursor.newRowIn() = this to newRow()

    /** A plain name in the one folder, and nothing that leads out of it. */
    private fun file(uri: Uri): File {
        val name = uri.pathSegments.singleOrNull() ?: throw FileNotFoundException(uri.toString())
        val file = File(folder(context ?: throw FileNotFoundException(name)), name)
        if (File(name).name != name || !file.isFile) throw FileNotFoundException(name)
        return file
    }

    companion object {
        /** Puts a file there in the place of the one before, and gives its address. */
        fun put(context: Context, file: ChosenFile): Uri {
            val folder = folder(context)
            folder.deleteRecursively()
            folder.mkdirs()
            val name = file.name.substringAfterLast('/').ifBlank { "file" }
            File(folder, name).writeBytes(file.content)
            return Uri.Builder()
                .scheme("content")
                .authority("${context.packageName}.shared")
                .appendPath(name)
                .build()
        }

        /** What an app that takes files goes by. */
        fun typeOf(name: String): String =
            when (name.substringAfterLast('.', "")) {
                "txt",
                "toml" -> "text/plain"
                "html" -> "text/html"
                "csv" -> "text/csv"
                "json" -> "application/json"
                else -> "application/octet-stream"
            }

        private fun folder(context: Context) = File(context.cacheDir, "shared")
    }
}

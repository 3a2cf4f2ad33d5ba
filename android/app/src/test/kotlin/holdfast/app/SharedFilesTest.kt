package holdfast.app

import android.net.Uri
import android.provider.OpenableColumns
import holdfast.ui.ChosenFile
import java.io.File
import java.io.FileNotFoundException
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFailsWith
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class SharedFilesTest {
    @Test
    fun aFileHasItsNameItsSizeAndItsKind() {
        val uri = SharedFiles.put(app, ChosenFile("session.csv", "a,b".toByteArray()))
        val provider = provider()
        provider.query(uri, null, null, null, null).use {
            assertTrue(it.moveToFirst())
            assertEquals("session.csv", it.getString(it.getColumnIndexOrThrow(OpenableColumns.DISPLAY_NAME)))
            assertEquals(3, it.getLong(it.getColumnIndexOrThrow(OpenableColumns.SIZE)))
        }
        assertEquals("text/csv", provider.getType(uri))
    }

    @Test
    fun nothingElseIsHandedOut() {
        val uri = SharedFiles.put(app, ChosenFile("code.txt", "CODE".toByteArray()))
        File(app.cacheDir, "secret.txt").writeText("secret")
        val provider = provider()
        val base = uri.toString().removeSuffix("code.txt")
        for (name in listOf("..%2Fsecret.txt", "../secret.txt", "", "gone.txt", "a/code.txt")) {
            assertFailsWith<FileNotFoundException>(name) { provider.openFile(Uri.parse(base + name), "r") }
        }
        assertFailsWith<SecurityException> { provider.openFile(uri, "rw") }
    }

    @Test
    fun theFileBeforeIsGone() {
        val first = SharedFiles.put(app, ChosenFile("one.txt", byteArrayOf(1)))
        SharedFiles.put(app, ChosenFile("../../two.txt", byteArrayOf(2)))
        assertFailsWith<FileNotFoundException> { provider().openFile(first, "r") }
        assertEquals(listOf("two.txt"), File(app.cacheDir, "shared").list()!!.toList())
    }

    companion object {
        internal fun provider(): SharedFiles =
            Robolectric.buildContentProvider(SharedFiles::class.java)
                .create("${app.packageName}.shared")
                .get()
    }
}

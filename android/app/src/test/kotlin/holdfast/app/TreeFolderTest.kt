package holdfast.app

import holdfast.core.CarriedFile
import holdfast.core.Language
import holdfast.core.speak
import java.io.File
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
@Config(shadows = [Resolver::class])
class TreeFolderTest {
    private val disk = folder("Crew files")
    private lateinit var carrier: TreeFolder

    @BeforeTest
    fun begin() {
        speak(Language.EN)
        carrier = TreeFolder(app.contentResolver, LocalFiles.over(disk), "Crew files")
    }

    private fun file(name: String, text: String = "sealed $name") = CarriedFile(name, text.toByteArray())

    private fun names() = disk.list()!!.sorted()

    @Test
    fun whatIsPutThereIsListedAndReadInOneQueryEach() {
        val put = soon { carrier.put(listOf(file("a.leaf"), file("b.leaf"))) }
        assertEquals(2u to 0, put.written to put.unwritten.size)
        assertEquals(listOf("a.leaf", "b.leaf"), names())
        File(disk, "inner").mkdir()
        LocalFiles.queries = 0
        val listed = soon { carrier.list() }
        assertEquals(mapOf("a.leaf" to 13uL, "b.leaf" to 13uL), listed.associate { it.name to it.bytes })
        assertEquals(1, LocalFiles.queries)
        val got = soon { carrier.get(listOf("b.leaf", "gone.leaf")) }
        assertEquals(listOf("b.leaf"), got.files.map { it.name })
        assertContentEquals("sealed b.leaf".toByteArray(), got.files.single().content)
        assertEquals(0, got.unread.size)
    }

    @Test
    fun whatIsThereStays() {
        soon { carrier.put(listOf(file("a.leaf"))) }
        val put = soon { carrier.put(listOf(file("a.leaf"), file("b.leaf"))) }
        assertEquals(1u, put.written)
        assertEquals(listOf("a.leaf", "b.leaf"), names())
    }

    @Test
    fun whatIsTornOrRottenUnderOurNameIsReplaced() {
        File(disk, "a.leaf").writeText("sealed")
        File(disk, "b.leaf").writeText("sealed B.leaf")
        val put = soon { carrier.put(listOf(file("a.leaf"), file("b.leaf"))) }
        assertEquals(2u to 0, put.written to put.unwritten.size)
        assertEquals(listOf("a.leaf", "b.leaf"), names())
        assertEquals("sealed b.leaf", File(disk, "b.leaf").readText())
    }

    @Test
    fun ofTwoWhoWriteOneFileAtOnceOneStaysAndNoneIsNamedAnew() {
        LocalFiles.beforeRename = { name -> File(disk, name).writeText("sealed $name") }
        val put = soon { carrier.put(listOf(file("a.leaf"))) }
        assertEquals(0u to 0, put.written to put.unwritten.size)
        assertEquals(listOf("a.leaf"), names())
    }

    @Test
    fun anotherFileOfTheNameThatCameMeanwhileIsSaidAndLeftAlone() {
        LocalFiles.beforeRename = { name -> File(disk, name).writeText("somebody else's") }
        val put = soon { carrier.put(listOf(file("a.leaf"))) }
        assertEquals("a.leaf", put.unwritten.single().name)
        assertEquals(listOf("a.leaf"), names())
        assertEquals("somebody else's", File(disk, "a.leaf").readText())
    }

    @Test
    fun aFolderThatIsStillLoadingIsWaitedFor() {
        File(disk, "a.leaf").writeText("sealed")
        LocalFiles.loads = 1
        assertEquals(listOf("a.leaf"), soon { carrier.list() }.map { it.name })
        LocalFiles.loads = 100
        val said = soonFails<Carried> { carrier.list() }.message!!
        assertTrue("Crew files is still loading" in said, said)
    }

    @Test
    fun aRightThatWasWithdrawnIsSaidWithWhatToDo() {
        soon { carrier.put(listOf(file("a.leaf"))) }
        LocalFiles.isAllowed = false
        for (act in
            listOf<suspend () -> Unit>(
                { carrier.list() },
                { carrier.get(listOf("a.leaf")) },
                { carrier.put(listOf(file("b.leaf"))) },
            )) {
            val said = soonFails<Carried> { act() }.message!!
            assertEquals(
                "Holdfast may no longer use Crew files. Choose the folder again. Your log is saved on this phone.",
                said,
            )
        }
        LocalFiles.isAllowed = true
        assertEquals(listOf("a.leaf"), names())
    }

    @Test
    fun aFolderThatIsGoneIsSaidTheSameWay() {
        disk.deleteRecursively()
        assertTrue("Choose the folder again" in soonFails<Carried> { carrier.list() }.message!!)
    }

    @Test
    fun aFullDiskIsSaidAndLeavesNoHalfFile() {
        LocalFiles.full = true
        val said = soonFails<Carried> { carrier.put(listOf(file("a.leaf"))) }.message!!
        assertTrue("no space left. Make room there" in said, said)
        assertEquals(emptyList(), names())
        LocalFiles.full = false
        assertEquals(1u, soon { carrier.put(listOf(file("a.leaf"))) }.written)
    }

    @Test
    fun noFileIsReadWithoutAnEnd() {
        File(disk, "a.leaf").writeBytes(ByteArray(TreeFolder.MOST_BYTES + 5_000))
        soon { carrier.list() }
        val got = soon { carrier.get(listOf("a.leaf")) }
        assertEquals(TreeFolder.MOST_BYTES + 1, got.files.single().content.size)
    }
}

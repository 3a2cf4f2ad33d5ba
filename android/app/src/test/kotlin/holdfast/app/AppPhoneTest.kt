package holdfast.app

import android.Manifest
import android.app.Activity
import android.content.Context
import android.content.Intent
import android.net.Uri
import holdfast.core.Heard
import holdfast.core.HoldfastException
import holdfast.core.Language
import holdfast.core.PhoneChoices
import holdfast.core.RecoveryDid
import holdfast.core.Restore
import holdfast.core.Role
import holdfast.core.Shade
import holdfast.core.TextSize
import holdfast.core.speak
import holdfast.kit.Host
import holdfast.kit.search
import holdfast.kit.words
import holdfast.ui.Bucket
import holdfast.ui.ChosenFile
import holdfast.ui.Server
import java.io.ByteArrayInputStream
import java.io.File
import java.nio.file.Files
import java.nio.file.Path
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Deferred
import kotlinx.coroutines.Job
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.async
import kotlinx.coroutines.runBlocking
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
@Config(shadows = [Resolver::class])
class AppPhoneTest {
    private val phone
        get() = app.phone

    private val activity = Robolectric.buildActivity(Activity::class.java).setup().get()
    private val scope = CoroutineScope(SupervisorJob() + MainThread)

    @BeforeTest
    fun begin() {
        TestKeystore.begin()
        speak(Language.EN)
        app.asking.attach(activity)
    }

    @AfterTest
    fun end() {
        phone.host.value?.close()
        scope.coroutineContext[Job]?.cancel()
    }

    /** Begins something that asks somebody, and gives what was asked. */
    private fun <T> asks(
        act: suspend () -> T
    ): Pair<Deferred<T>, org.robolectric.shadows.ShadowActivity.IntentForResult> {
        val answer = scope.async { act() }
        var asked: org.robolectric.shadows.ShadowActivity.IntentForResult? = null
        until("somebody is asked") {
            asked = asked ?: shadowOf(activity).nextStartedActivityForResult
            asked != null
        }
        return answer to asked!!
    }

    private fun <T> Deferred<T>.got(): T {
        until("it is answered") { isCompleted }
        return runBlocking { await() }
    }

    private fun <T> Deferred<T>.failed(): String {
        until("it is answered") { isCompleted }
        return runBlocking { runCatching { await() }.exceptionOrNull()!!.message!! }
    }

    private fun kept(folder: File): Uri {
        val tree = LocalFiles.over(folder)
        val (kept, asked) = asks { phone.keepFolder() }
        assertEquals(Intent.ACTION_OPEN_DOCUMENT_TREE, asked.intent.action)
        app.asking.answered(asked.requestCode, Activity.RESULT_OK, Intent().setData(tree))
        assertEquals(folder.name, kept.got()!!.place)
        return tree
    }

    @Test
    fun nobodyHasStartedOnANewPhone() {
        assertNull(soon { phone.open() })
        assertNull(phone.host.value)
    }

    @Test
    fun whoStartedIsThereAgainWithTheSameHost() {
        val host = soon { phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }
        assertTrue(host === soon { phone.open() })
        host.close()
        // Another process.
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        val opened = soon { again.open() }!!
        assertEquals("Ines", soon { opened.ask { who() } }.name)
        opened.close()
        assertTrue(File(app.noBackupFilesDir, "home/device.json").exists(), "the home is where backups reach")
    }

    @Test
    fun aLogThatCameBackIsThereAgainWithTheKeystoresKey() {
        val home = File(folder("lost"), "home")
        val lost = soon { Host.start(home.path, Crew.start("Ines", Role.ATHLETE, 1), Moments("one")) }
        val crew = Crew(lost, Moments("one"))
        val code = soon { lost.ask { now -> recovery(RecoveryDid.Show, now) }.code!! }
        lost.close()
        val search = Restore.begin(code)
        soon { search.search(crew.shelf) }
        assertFalse(File(app.noBackupFilesDir, "home").exists(), "nothing is written by a search")
        soon { phone.restore(search) }.close()
        crew.close()
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        val opened = soon { again.open() }!!
        assertEquals("Ines", soon { opened.ask { who() } }.name)
        opened.close()
    }

    @Test
    fun whatWasChosenOnThePhoneIsThereAgain() {
        assertEquals(PhoneChoices(TextSize.PHONE, Shade.PHONE, Heard.WORDS), phone.choices())
        val chosen = PhoneChoices(TextSize.LARGEST, Shade.DARK, Heard.TONES)
        phone.choose(chosen)
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        assertEquals(chosen, again.choices())
        val file = app.getSharedPreferences("choices", Context.MODE_PRIVATE)
        file.edit().putString("shade", "SEPIA").commit()
        assertEquals(chosen.copy(shade = Shade.PHONE), again.choices(), "what is not known is as it comes")
    }

    @Test
    fun aHomeOfANewerVersionIsSaidAndStaysAsItIs() {
        soon { phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }.close()
        val database =
            File(app.noBackupFilesDir, "home").listFiles()!!.first {
                it.extension in setOf("db", "sqlite", "sqlite3")
            }
        // The number that SQLite keeps for whoever owns the file.
        java.io.RandomAccessFile(database, "rw").use {
            it.seek(60)
            it.writeInt(9_999)
        }
        val bytes = database.readBytes()
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        val error = soonFails<HoldfastException.TooNew> { again.open() }
        assertTrue("9999" in error.words || "newer" in error.words, error.words)
        assertContentEquals(bytes, database.readBytes())
    }

    @Test
    fun aHomeThatCameWithoutItsKeyIsSaid() {
        soon { phone.start(Crew.start("Ines", Role.ATHLETE, 1)) }.close()
        TestKeystore.lose()
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        val error = soonFails<HoldfastException.Invalid> { again.open() }
        assertTrue("recovery code" in error.words, error.words)
    }

    @Test
    fun aFolderIsKeptWithTheRightToItAndForgottenWithIt() {
        val folder = folder("Crew files")
        val tree = kept(folder)
        val rights = app.contentResolver.persistedUriPermissions.single()
        assertEquals(tree, rights.uri)
        assertTrue(rights.isReadPermission && rights.isWritePermission)
        val carrier = soon { phone.carriers() }.single()
        assertFalse(carrier.isServer)
        soon { phone.reach(carrier).put(listOf(holdfast.core.CarriedFile("a.leaf", byteArrayOf(1)))) }
        assertEquals(listOf("a.leaf"), folder.list()!!.toList())
        kept(folder)
        assertEquals(1, soon { phone.carriers() }.size, "one folder is kept once")
        soon { phone.forget(carrier) }
        assertEquals(0, soon { phone.carriers() }.size)
        assertEquals(0, app.contentResolver.persistedUriPermissions.size)
        assertEquals(listOf("a.leaf"), folder.list()!!.toList(), "nothing is deleted there")
    }

    @Test
    fun aRightThatWasTakenBackInTheSettingsIsSaidBeforeAnything() {
        val tree = kept(folder("Crew files"))
        app.contentResolver.releasePersistableUriPermission(
            tree,
            Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION,
        )
        val carrier = soon { phone.carriers() }.single()
        val said = soonFails<Carried> { phone.reach(carrier) }.message!!
        assertTrue("Choose the folder again" in said, said)
    }

    @Test
    fun aChooserThatWasClosedIsNothing() {
        val (kept, asked) = asks { phone.keepFolder() }
        app.asking.answered(asked.requestCode, Activity.RESULT_CANCELED, null)
        assertNull(kept.got())
        assertEquals(0, soon { phone.carriers() }.size)
    }

    @Test
    fun anAnswerReachesThePhoneThatWasTurnedMeanwhile() {
        val (kept, asked) = asks { phone.keepFolder() }
        val turned = Robolectric.buildActivity(Activity::class.java).setup().get()
        app.asking.attach(turned)
        app.asking.detach(activity)
        val tree = LocalFiles.over(folder("Crew files"))
        app.asking.answered(asked.requestCode, Activity.RESULT_OK, Intent().setData(tree))
        assertEquals("Crew files", kept.got()!!.place)
    }

    @Test
    fun aListOfCarriersThatIsDamagedIsSaidAndKeptAside() {
        var told: String? = null
        File(app.filesDir, "carriers.json").writeText("[{\"id\":")
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) { told = it }
        assertEquals(0, soon { again.carriers() }.size)
        assertTrue("Add them again" in told!!, told)
        assertTrue(app.filesDir.list()!!.any { "damaged" in it })
    }

    @Test
    fun aServerIsKeptAndItsPasswordLiesWrapped() {
        val kept = soon {
            phone.keepServer(Server.WebDav("https://files.example.org/cellar", "ines", "only for this app"))
        }
        assertTrue(kept.isServer)
        assertEquals("https://files.example.org/cellar/", kept.place)
        val all = (app.filesDir.walk() + app.noBackupFilesDir.walk()).filter { it.isFile }
        assertFalse(all.any { "only for this app" in it.readText() }, "the password lies open")
        assertNotNull(soon { phone.reach(kept) })
        TestKeystore.lose()
        assertTrue(
            "lost the password or the key of https://files.example.org" in
                soonFails<Carried> { phone.reach(kept) }.message!!
        )
    }

    @Test
    fun aBucketIsKeptAndItsSecretLiesWrapped() {
        val bucket = Bucket("cellar", "eu-west-3", "crew", "KEY")
        val server = Server.S3("https://nas.example.org:9000", bucket, "only for this app")
        val kept = soon { phone.keepServer(server) }
        assertTrue(kept.isServer)
        assertEquals("https://nas.example.org:9000/cellar/crew/", kept.place)
        val all = (app.filesDir.walk() + app.noBackupFilesDir.walk()).filter { it.isFile }
        assertFalse(all.any { "only for this app" in it.readText() }, "the secret lies open")
        // Another process.
        val again = AppPhone(app, Moments("one"), Keystore(app.noBackupFilesDir), app.asking) {}
        val read = soon { again.stored() }.single()
        assertEquals(bucket, read.bucket)
        assertEquals(Way.INTERNET, Way.to(read))
        assertNotNull(soon { again.reach(kept) })
        soon { again.keepServer(server) }
        assertEquals(1, soon { again.carriers() }.size, "one bucket is kept once")
        soon { again.forget(kept) }
        assertEquals(0, soon { again.carriers() }.size)
        assertFalse(app.noBackupFilesDir.walk().any { it.isFile && "password-" in it.name }, "it is gone")
    }

    @Test
    fun aPhoneThatIsFullSaysSoAndKeepsWhatItHad() {
        kept(folder("Crew files"))
        // A device of Linux that has no room for anything.
        Files.createSymbolicLink(File(app.filesDir, "carriers.json.part").toPath(), Path.of("/dev/full"))
        val server = Server.WebDav("https://files.example.org/cellar", "ines", "word")
        val said = soonFails<Carried> { phone.keepServer(server) }.message
        assertEquals(
            "This phone has no space left. Delete something, then try again. Your log is saved on this phone.",
            said,
        )
        assertEquals(listOf("Crew files"), soon { phone.carriers() }.map { it.place })
    }

    @Test
    fun aServerThatCannotBeIsRefusedByTheCoreAndNotKept() {
        val error =
            soonFails<HoldfastException> {
                phone.keepServer(Server.WebDav("http://files.example.org/x", "ines", "word"))
            }
        assertTrue("not encrypted" in error.words, error.words)
        val bucket = Bucket("Cellar", "us-east-1", "", "KEY")
        val other =
            soonFails<HoldfastException> {
                phone.keepServer(Server.S3("https://nas.example.org", bucket, "only for this app"))
            }
        assertTrue("bucket cannot be called \"Cellar\"" in other.words, other.words)
        assertEquals(0, soon { phone.carriers() }.size)
    }

    @Test
    fun aCodeComesFromTheScannerAndWhatKeptItFromLookingIsSaid() {
        shadowOf(app).grantPermissions(Manifest.permission.CAMERA)
        val (text, asked) = asks { phone.scan() }
        assertEquals(ScanActivity::class.java.name, asked.intent.component?.className)
        app.asking.answered(
            asked.requestCode,
            Activity.RESULT_OK,
            Intent().putExtra(ScanActivity.TEXT, "CODE"),
        )
        assertEquals("CODE", text.got())
        val (none, again) = asks { phone.scan() }
        app.asking.answered(
            again.requestCode,
            Activity.RESULT_OK,
            Intent().putExtra(ScanActivity.TROUBLE, "The camera cannot be used now."),
        )
        assertEquals("The camera cannot be used now.", none.failed())
    }

    @Test
    fun withoutTheRightToTheCameraTheOtherWayIsNamed() {
        val scanned = scope.async { phone.scan() }
        until("the right is asked for") { shadowOf(activity).lastRequestedPermission != null }
        val asked = shadowOf(activity).lastRequestedPermission
        assertEquals(listOf(Manifest.permission.CAMERA), asked.requestedPermissions.toList())
        app.asking.permitted(asked.requestCode, intArrayOf(-1))
        assertTrue("type the code" in scanned.failed())
    }

    @Test
    fun aPlanIsReadWithItsName() {
        val plan = Uri.parse("content://plans/7")
        shadowOf(app.contentResolver).registerInputStream(plan, ByteArrayInputStream("[block]".toByteArray()))
        val (chosen, asked) = asks { phone.chooseFile() }
        assertEquals(Intent.ACTION_OPEN_DOCUMENT, asked.intent.action)
        assertTrue(Intent.CATEGORY_OPENABLE in asked.intent.categories)
        app.asking.answered(asked.requestCode, Activity.RESULT_OK, Intent().setData(plan))
        assertEquals("[block]", String(chosen.got()!!.content))
    }

    @Test
    fun aFileThatIsNoPlanByItsSizeIsSaid() {
        val film = Uri.parse("content://films/7")
        shadowOf(app.contentResolver).registerInputStream(film, ByteArrayInputStream(ByteArray(2_000_000)))
        val (chosen, asked) = asks { phone.chooseFile() }
        app.asking.answered(asked.requestCode, Activity.RESULT_OK, Intent().setData(film))
        assertEquals("7 is too large for a plan. Choose another file.", chosen.failed())
    }

    @Test
    fun whereNothingChoosesFilesThatIsSaid() {
        shadowOf(app).checkActivities(true)
        assertTrue("Install a file manager" in soonFails<Carried> { phone.chooseFile() }.message!!)
    }

    @Test
    fun aSharedFileIsHandedOutByOurOwnProvider() {
        Robolectric.buildContentProvider(SharedFiles::class.java).create("${app.packageName}.shared")
        soon { phone.share(ChosenFile("code.txt", "CODE".toByteArray())) }
        val chooser = shadowOf(activity).nextStartedActivity
        val sent = chooser.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
        assertEquals(Intent.ACTION_SEND to "text/plain", sent.action to sent.type)
        assertTrue(sent.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
        val uri = sent.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)!!
        assertEquals(uri, sent.clipData!!.getItemAt(0).uri)
        val provider = SharedFilesTest.provider()
        assertEquals("CODE", provider.openFile(uri, "r").let { File("/proc/self/fd/${it.fd}").readText() })
    }

    @Test
    fun chanceIsDrawnAnewEachTime() {
        assertEquals(64, phone.chance(64).size)
        assertFalse(phone.chance(64).contentEquals(phone.chance(64)))
    }
}

package holdfast.app

import holdfast.core.CarriedFile
import holdfast.core.Language
import holdfast.core.Role
import holdfast.core.Server
import holdfast.core.Tap
import holdfast.core.speak
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import java.io.File
import java.io.IOException
import java.net.ServerSocket
import java.net.Socket
import java.nio.file.Files
import java.util.concurrent.TimeUnit
import kotlin.test.AfterTest
import kotlin.test.BeforeTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/**
 * The app's carrier against Apache, WsgiDAV and versitygw as they are installed. `cargo task check servers`
 * asks for it.
 */
@RunWith(RobolectricTestRunner::class)
class ServersCheck {
    private val folder = Files.createTempDirectory("dav").toFile()
    private val files = File(folder, "files/crew")
    private val bucket = File(folder, "buckets/cellar")
    private val port = ServerSocket(0).use { it.localPort }
    private var process: Process? = null
    private val clock = Moments("one")
    private var looked = 0

    @BeforeTest
    fun begin() {
        speak(Language.EN)
        files.mkdirs()
        // Apache serves as a user of its own.
        for (open in listOf(folder, files.parentFile, files)) {
            open.setWritable(true, false)
            open.setReadable(true, false)
            open.setExecutable(true, false)
        }
    }

    @AfterTest
    fun end() {
        process?.destroy()
        process?.waitFor(20, TimeUnit.SECONDS)
        folder.deleteRecursively()
    }

    private fun starts(vararg command: String, with: Map<String, String> = emptyMap()) {
        val log = File(folder, "out.log")
        val program = ProcessBuilder(*command).redirectErrorStream(true).redirectOutput(log)
        program.environment() += with
        process = program.start()
        val end = System.nanoTime() + 60_000_000_000
        while (true) {
            try {
                Socket("127.0.0.1", port).close()
                return
            } catch (_: IOException) {
                check(System.nanoTime() < end && process!!.isAlive) { log.readText() }
                Thread.sleep(50)
            }
        }
    }

    private fun wsgidav() {
        val settings = File(folder, "wsgidav.yaml")
        settings.writeText(
            """
            host: 127.0.0.1
            port: $port
            server: cheroot
            provider_mapping:
              "/": ${folder.path}/files
            http_authenticator:
              accept_basic: true
              accept_digest: false
              default_to_digest: false
            simple_dc:
              user_mapping:
                "*":
                  $USER:
                    password: "$PASSWORD"
            """
                .trimIndent()
        )
        val program = File(System.getProperty("holdfast.servers"), "python/bin/wsgidav").path
        starts(program, "--config", settings.path)
    }

    private fun apache() {
        val modules = "/usr/lib/apache2/modules"
        val load =
            listOf(
                    "mpm_event",
                    "authn_core",
                    "authn_file",
                    "authz_core",
                    "authz_user",
                    "auth_basic",
                    "dav",
                    "dav_fs",
                    "alias",
                )
                .joinToString("\n") { "LoadModule ${it}_module $modules/mod_$it.so" }
        File(folder, "passwords").writeText("ines:{SHA}n+QxL75f2TLM5OXSS/Jpnlmf91A=\n")
        val settings = File(folder, "apache.conf")
        val at = folder.path
        settings.writeText(
            """
            $load
            ServerRoot $at
            ServerName 127.0.0.1
            Listen 127.0.0.1:$port
            PidFile $at/pid
            ErrorLog $at/error.log
            User www-data
            Group www-data
            DocumentRoot $at/files
            DavLockDB $at/locks
            Redirect 301 /old http://localhost:$port/crew
            <Directory $at/files>
              Dav On
              AuthType Basic
              AuthName crew
              AuthUserFile $at/passwords
              Require valid-user
            </Directory>
            """
                .trimIndent()
        )
        starts("/usr/sbin/apache2", "-X", "-f", settings.path)
    }

    private fun versitygw() {
        bucket.mkdirs()
        val program = File(System.getProperty("holdfast.servers"), "bin/versitygw").path
        val keys = mapOf("ROOT_ACCESS_KEY" to USER, "ROOT_SECRET_KEY" to PASSWORD)
        starts(program, "--port", "127.0.0.1:$port", "posix", bucket.parent, with = keys)
    }

    private fun server(path: String = "crew", password: String = PASSWORD) =
        Server.webdav("http://127.0.0.1:$port/$path", USER, password, 7u)

    private fun s3(bucket: String = "cellar", keyId: String = USER, secret: String = PASSWORD) =
        Server.s3("http://127.0.0.1:$port", bucket, "us-east-1", "crew", keyId, secret, 7u)

    private fun carrier(host: Host? = null, server: Server = server(), clock: DeviceClock = this.clock) =
        ServerCarrier(server, HttpSender(), clock) { parts ->
            looked += 1
            host?.ask { now -> toLookInto(server.place(), parts, now) } ?: parts
        }

    private fun twoMeet(server: () -> Server = ::server, files: File = this.files) {
        val athlete = soon {
            Host.start(File(folder("ines"), "home").path, Crew.start("Ines", Role.ATHLETE, 1), clock)
        }
        val crew = Crew(athlete, clock)
        soon {
            athlete.tap(Tap.Begin(null), null)
            val report = athlete.exchange(carrier(athlete, server()))
            assertTrue(report.put > 0u, "$report")
            val came = crew.coach.exchange(carrier(crew.coach, server()))
            assertTrue(came.entries > 0uL, "$came")
            // Nothing is new: nothing is fetched or brought again.
            val still = athlete.exchange(carrier(athlete, server()))
            assertEquals(0u to 0u, still.put to still.leaves)
        }
        assertTrue(looked >= 3)
        val laid = files.walk().filter { it.isFile && it.extension == "leaf" }.toList()
        assertTrue(laid.isNotEmpty() && laid.all { it.parentFile.parentFile == files }, "$laid")
        assertTrue(files.walk().none { it.name.endsWith(".tmp") })
        crew.close()
        athlete.close()
    }

    @Test
    fun twoDevicesMeetOnWsgiDav() {
        wsgidav()
        twoMeet()
    }

    @Test
    fun twoDevicesMeetOnApache() {
        apache()
        twoMeet()
    }

    @Test
    fun twoDevicesMeetOnVersitygw() {
        versitygw()
        twoMeet(::s3, File(bucket, "crew"))
    }

    @Test
    fun aFileIsWrittenOnceAndReadBack() {
        wsgidav()
        isWrittenOnce(carrier())
    }

    @Test
    fun aFileIsWrittenOnceIntoABucketAndReadBack() {
        versitygw()
        isWrittenOnce(carrier(server = s3()))
    }

    private fun isWrittenOnce(carrier: ServerCarrier) {
        val content = ByteArray(700_000) { (it * 31).toByte() }
        assertEquals(1u, soon { carrier.put(listOf(CarriedFile(LEAF, content))) }.written)
        assertEquals(0u, soon { carrier.put(listOf(CarriedFile(LEAF, byteArrayOf(1)))) }.written)
        assertEquals(listOf(LEAF to 700_000uL), soon { carrier.list() }.map { it.name to it.bytes })
        val got = soon { carrier.get(listOf(LEAF, LEAF.replace("00000001", "00000002"))) }
        assertContentEquals(content, got.files.single().content)
        assertEquals(0, got.unread.size)
    }

    @Test
    fun aWrongPasswordAWrongFolderAndAServerThatMovedAreSaid() {
        apache()
        fun said(carrier: ServerCarrier) = soonFails<Carried> { carrier.list() }.message!!
        assertTrue("does not accept this user name" in said(carrier(server = server(password = "no"))))
        val missing = carrier(server = server("nowhere"))
        val put = soonFails<Carried> { missing.put(listOf(CarriedFile(LEAF, byteArrayOf(1)))) }.message!!
        assertTrue("is not there. Check the address" in put, put)
        assertTrue("sends on to http://localhost:$port/crew" in said(carrier(server = server("old"))))
        assertEquals(emptyList(), files.walk().filter { it.isFile }.toList())
    }

    @Test
    fun aWrongKeyAMissingBucketAndAClockThatIsOffAreSaid() {
        versitygw()
        fun said(server: Server, clock: DeviceClock = this.clock): String {
            val carrier = carrier(server = server, clock = clock)
            val put = soonFails<Carried> { carrier.put(listOf(CarriedFile(LEAF, byteArrayOf(1)))) }.message!!
            val list = soonFails<Carried> { carrier.list() }.message!!
            assertEquals(list, put)
            return list
        }
        for (wrong in listOf(s3(keyId = "nobody"), s3(secret = "no"))) {
            val said = said(wrong)
            assertTrue("Check the key id, the secret key" in said, said)
        }
        val missing = said(s3(bucket = "nowhere"))
        assertTrue("/nowhere/crew/ is not there. Check the address" in missing, missing)
        for ((days, wanted) in
            listOf(1L to "24 hours ahead of", -1L to "hours behind", 7L to "7 days ahead of")) {
            val off = said(s3(), off(days))
            assertTrue(wanted in off && "Set date and time to automatic" in off, off)
        }
        assertEquals(emptyList(), bucket.walk().filter { it.isFile }.toList())
    }

    @Test
    fun aServerThatIsGoneIsOfflineAndNoFault() {
        wsgidav()
        val carrier = carrier()
        soon { carrier.put(listOf(CarriedFile(LEAF, byteArrayOf(1, 2)))) }
        process!!.destroyForcibly().waitFor()
        val said = soonFails<Carried> { carrier.put(listOf(CarriedFile(LEAF, byteArrayOf(1, 2)))) }.message!!
        assertTrue("No connection to" in said && "Your log is saved" in said, said)
        wsgidav()
        assertEquals(0u, soon { carrier.put(listOf(CarriedFile(LEAF, byteArrayOf(1, 2)))) }.written)
    }

    /** A clock that somebody set wrong. */
    private fun off(days: Long) = DeviceClock {
        clock.now().let { it.copy(wallMs = it.wallMs + days * 24 * 3_600_000) }
    }

    private companion object {
        const val USER = "ines"
        const val PASSWORD = "Tr0mb0ne-never-shown"
        const val LEAF = "0123456789abcdef0123456789abcdef-00c0ffee-00000001-fedcba9876543210.leaf"
    }
}

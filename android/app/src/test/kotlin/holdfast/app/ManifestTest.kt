package holdfast.app

import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import org.w3c.dom.Element

/** What the system reads before any of our code runs. */
class ManifestTest {
    private val folder = File(System.getProperty("holdfast.app"), "src/main")

    private fun xml(name: String): Element =
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(File(folder, name)).documentElement

    private fun Element.all(tag: String): List<Element> {
        val found = getElementsByTagName(tag)
        return (0 until found.length).map { found.item(it) as Element }
    }

    private fun Element.of(name: String): String = getAttribute("android:$name")

    private val manifest = xml("AndroidManifest.xml")

    @Test
    fun thesePermissionsAndNoOthers() {
        val asked = manifest.all("uses-permission").map { it.of("name").removePrefix("android.permission.") }
        assertEquals(
            setOf(
                "FOREGROUND_SERVICE",
                "FOREGROUND_SERVICE_HEALTH",
                "HIGH_SAMPLING_RATE_SENSORS",
                "WAKE_LOCK",
                "VIBRATE",
                "POST_NOTIFICATIONS",
                "INTERNET",
                "ACCESS_NETWORK_STATE",
                "RECEIVE_BOOT_COMPLETED",
                "CAMERA",
            ),
            asked.toSet(),
        )
        assertEquals(asked.size, asked.toSet().size)
    }

    @Test
    fun everyPartIsThereAndOnlyTheFirstScreenIsForOthers() {
        val parts = listOf("activity", "service", "provider").flatMap { manifest.all(it) }
        for (part in parts) Class.forName("holdfast.app" + part.of("name"))
        Class.forName("holdfast.app" + manifest.all("application").single().of("name"))
        assertEquals(
            listOf(".HoldfastActivity"),
            parts.filter { it.of("exported") == "true" }.map { it.of("name") },
        )
        assertTrue(parts.all { it.of("exported") in setOf("true", "false") })
    }

    @Test
    fun theClocksServiceIsOfTheTypeHealthAndSpeechEnginesAreVisible() {
        val services = manifest.all("service").associateBy { it.of("name") }
        assertEquals("health", services.getValue(".ClockService").of("foregroundServiceType"))
        assertEquals(
            "android.permission.BIND_JOB_SERVICE",
            services.getValue(".ExchangeJob").of("permission"),
        )
        val seen = manifest.all("queries").single().all("action").map { it.of("name") }
        assertEquals(listOf("android.intent.action.TTS_SERVICE"), seen)
    }

    @Test
    fun nothingIsBackedUpAndNothingGoesToAnotherPhone() {
        val application = manifest.all("application").single()
        assertEquals("false", application.of("allowBackup"))
        assertEquals("@xml/data_extraction_rules", application.of("dataExtractionRules"))
        assertEquals("@xml/backup_rules", application.of("fullBackupContent"))
        val domains = setOf("root", "file", "database", "sharedpref", "external")
        val devices = setOf("device_root", "device_file", "device_database", "device_sharedpref")
        fun excluded(of: Element) = of.all("exclude").map { it.getAttribute("domain") }.toSet()
        val rules = xml("res/xml/data_extraction_rules.xml")
        for (way in listOf("cloud-backup", "device-transfer")) {
            assertEquals(domains + devices, excluded(rules.all(way).single()))
        }
        assertEquals(domains, excluded(xml("res/xml/backup_rules.xml")))
        assertEquals(0, rules.all("include").size)
    }

    @Test
    fun theOnlyWordOfOursIsTheName() {
        val strings = xml("res/values/strings.xml").all("string")
        assertEquals(listOf("Holdfast"), strings.map { it.textContent })
        val languages = xml("res/xml/locales.xml").all("locale").map { it.of("name") }
        assertEquals(holdfast.core.Language.entries.map { it.name.lowercase() }.toSet(), languages.toSet())
    }
}

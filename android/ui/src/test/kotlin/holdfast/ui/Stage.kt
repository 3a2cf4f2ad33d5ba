package holdfast.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.toComposeImageBitmap
import androidx.compose.ui.graphics.toPixelMap
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.dp
import holdfast.core.Instant
import holdfast.core.Language
import holdfast.core.Mass
import holdfast.core.MassUnit
import holdfast.core.PairDid
import holdfast.core.Question
import holdfast.core.Role
import holdfast.core.Row
import holdfast.core.SideReading
import holdfast.core.Start
import holdfast.core.Tap
import holdfast.core.speak
import holdfast.kit.DeviceClock
import holdfast.kit.Host
import java.io.File
import java.nio.file.Files
import kotlinx.coroutines.runBlocking

/** A clock that tests move. */
internal class Hands(private var wall: Long) : DeviceClock {
    private var boot = 1_000_000L

    override fun now(): Instant = Instant(wall, 60, boot, "one boot")

    fun pass(ms: Long) {
        wall += ms
        boot += ms
    }

    fun goTo(ms: Long) = pass(ms - wall)
}

/** A crew of a coach and Ines, in a boathouse cellar, on the real core. */
internal class Stage(plan: String) : AutoCloseable {
    private val folder: File = Files.createTempDirectory("stage").toFile()
    val hands = Hands(tuesday)
    private val coach = begin("Maren", Role.COACH, 200)
    val ines: Host = begin("Ines", Role.ATHLETE, 1)
    val phone: TestPhone = TestPhone(File(folder, "Ines"), hands)
    val shell: Shell = Shell(ines, phone)
    val coachPhone: TestPhone = TestPhone(File(folder, "Maren"), hands, 90)
    val coachShell: Shell = Shell(coach, coachPhone)
    val files: File = File(folder, "Boathouse crew").also { it.mkdirs() }

    init {
        runBlocking {
            coach.ask { now -> publish("plan.toml", plan.toByteArray(), now) }
            pair()
            for (host in listOf(coach, ines, coach, ines)) host.exchange(FolderCarrier(files))
            shell.start()
        }
    }

    private fun begin(name: String, role: Role, chance: Int): Host = runBlocking {
        val home = File(folder, name)
        Host.start(
            home.path,
            Start(role, name, MassUnit.KG, ByteArray(80) { (chance * 37 + it).toByte() }),
            hands,
        )
    }

    /** Each scans what the other shows, then the words are compared. */
    private suspend fun pair() {
        suspend fun Host.does(did: PairDid) = ask { now -> pair(did, now) }
        val chance = ByteArray(32) { (it * 5 + 1).toByte() }
        val shown = coach.does(PairDid.Invite(chance))
        val answer = ines.does(PairDid.Scan(shown.code!!, chance.reversedArray()))
        val opened = coach.does(PairDid.Scan(answer.code!!, chance))
        val compared = ines.does(PairDid.Scan(opened.code!!, chance))
        val line = opened.lines.indexOf(compared.words.joinToString(" ")) + 1
        coach.does(PairDid.Pick(line.toUInt(), null))
        ines.does(PairDid.Match(matches = true, shareEarlier = true))
    }

    /** A hold's clock is started. */
    suspend fun holds() {
        shell.press()
        shell.choose(shell.screen!!.rows.first { it is Row.Hold })
        hands.pass(5_000)
        shell.press()
    }

    /** A week after a first session, so that loads are known. */
    suspend fun trained() {
        shell.press()
        logs(listOf(50, 55, 60))
        hands.pass(week)
        shell.start()
    }

    /** Logs sets by hand, and ends the session. */
    suspend fun logs(loads: List<Long>) {
        loads.forEachIndexed { at, kg ->
            val load = Mass(kg * 100_000_000_000)
            val reps = if (at == loads.lastIndex) 5u else null
            ines.tap(Tap.LogSet("Squat", (at + 1).toUInt(), load, reps, 2u), null)
            hands.pass(180_000)
        }
        ines.tap(Tap.Finish(7u, 60u), null)
        shell.start()
    }

    private fun read(tenths: Long) = listOf(SideReading(1u, tenths), SideReading(2u, tenths + 4))

    /** Sets as they are proposed, the first time with loads by hand; the open set with so many reps. */
    suspend fun asPlanned(reps: UInt) {
        for (set in 1u..3u) {
            val first = if (shell.screen!!.here.key.asks == Question.LOAD) 40L + 5 * set.toLong() else null
            val load = first?.let { Mass(it * 100_000_000_000) }
            val done = if (set == 3u) reps else first?.let { 8u }
            ines.tap(Tap.LogSet("Squat", set, load, done, first?.let { 2u }), null)
            hands.pass(180_000)
            shell.look()
        }
        ines.tap(Tap.Finish(7u, 60u), null)
        shell.start()
    }

    /** A day on which range of motion is read before and after a stretch, twice. */
    suspend fun reads() {
        for (tenths in listOf(82L, 96L, 105L)) {
            shell.press()
            val rows = shell.screen!!.rows.filterIsInstance<Row.Measure>()
            for (row in rows) ines.tap(Tap.LogRange(row.piece, row.`when`, read(tenths)), null)
            ines.tap(Tap.Finish(5u, 60u), null)
            hands.pass(week)
            shell.start()
        }
    }

    /** The home of Ines, to be opened once its host is closed. */
    fun again(): String = File(folder, "Ines").path

    override fun close() {
        ines.close()
        coach.close()
        folder.deleteRecursively()
    }

    companion object {
        /** Tuesday 3 November 2026, 19:28 in Berlin. */
        const val tuesday: Long = 1_793_730_480_000
        const val week: Long = 7 * 24 * 60 * 60 * 1000L

        fun plan(name: String): String = File(System.getProperty("holdfast.fixtures"), name).readText()
    }
}

/** The phone's font, where Debian puts it. */
internal val roboto: FontFamily by lazy {
    fun font(name: String, weight: FontWeight) =
        Font(File("/usr/share/fonts/truetype/roboto/unhinted/RobotoTTF/Roboto-$name.ttf"), weight)
    FontFamily(
        font("Regular", FontWeight.Normal),
        font("Medium", FontWeight.Medium),
        font("Medium", FontWeight.SemiBold),
        font("Bold", FontWeight.Bold),
    )
}

/** A phone's size, within the window that tests are given. */
@Composable
internal fun Held(content: @Composable () -> Unit) {
    Box(Modifier.size(400.dp, 764.dp)) { content() }
}

/** How a picture is made. */
internal data class Look(
    val wide: Int = 390,
    val high: Int = 844,
    val dark: Boolean = false,
    val text: Float = 1f,
)

/** Draws what a shell shows into a PNG in the build folder. */
internal fun picture(name: String, look: Look, content: @Composable () -> Unit): File {
    val density = 2f
    val scene =
        ImageComposeScene(
            (look.wide * density).toInt(),
            (look.high * density).toInt(),
            Density(density, look.text),
            content = content,
        )
    try {
        // What is worked out in a first frame shows in the second.
        scene.render(0)
        val image = scene.render(16_000_000)
        val folder = File(System.getProperty("holdfast.pictures")).also { it.mkdirs() }
        // Something is drawn: more than the ground, and less than a blot.
        val drawn = image.toComposeImageBitmap().toPixelMap()
        val ground = drawn[1, 1]
        val (columns, rows) = (0 until drawn.width step 7) to (0 until drawn.height step 7)
        val inked = rows.sumOf { y -> columns.count { x -> drawn[x, y] != ground } }
        val share = inked.toDouble() / (columns.count() * rows.count())
        check(share in 0.004..0.75) { "$name: $share of it is drawn" }
        val file = File(folder, "$name.png").also { it.parentFile.mkdirs() }
        file.writeBytes(image.encodeToData()!!.bytes)
        return file
    } finally {
        scene.close()
    }
}

/**
 * Draws what a shell shows; in a wide check, with `holdfast.everywhere` set, once more on every phone there
 * is: small, usual, large and a tablet, light and dark, at both sizes of text, in both languages.
 */
internal fun everywhere(shell: Shell, name: String, look: Look) {
    fun draw(name: String, look: Look) =
        picture(name, look) { HoldfastApp(shell, look.dark, roboto, moves = false) }
    draw(name, look)
    if (System.getProperty("holdfast.everywhere") == null || look != Look()) return
    // What was chosen by hand is chosen again: with another language the core draws anew.
    val chosen = shell.screen?.here?.takeIf { it.chosen && shell.place == Place.SESSION }?.row
    suspend fun again() {
        shell.again()
        if (shell.pages.shown == null && shell.asked == null) chosen?.let { shell.choose(it) }
    }
    for (language in Language.entries) {
        spoken(language) {
            runBlocking { again() }
            for (size in sizes) {
                for (dark in listOf(false, true)) {
                    for (text in listOf(1f, 2f)) {
                        val (wide, high) = size
                        val shade = if (dark) "dark" else "light"
                        val called = "everywhere/$name-$language-$wide-$shade-${text.toInt()}"
                        draw(called, Look(wide, high, dark, text))
                    }
                }
            }
        }
    }
    runBlocking { again() }
}

/** A small phone, the usual one, a large one, a tablet: width and height in dp. */
private val sizes = listOf(320 to 640, 390 to 844, 430 to 932, 820 to 1180)

internal fun spoken(language: Language, act: () -> Unit) {
    speak(language)
    try {
        act()
    } finally {
        speak(Language.EN)
    }
}

package holdfast.window

import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.remember
import androidx.compose.ui.input.key.Key
import androidx.compose.ui.input.key.KeyEventType
import androidx.compose.ui.input.key.key
import androidx.compose.ui.input.key.type
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.Window
import androidx.compose.ui.window.application
import androidx.compose.ui.window.rememberWindowState
import holdfast.core.Instant
import holdfast.kit.DeviceClock
import holdfast.ui.Entry
import holdfast.ui.HoldfastEntry
import java.io.File
import java.util.TimeZone

/** A desktop's two clocks. Its boot clock stands still while the machine sleeps, as no phone's does. */
private val clock = DeviceClock {
    val wall = System.currentTimeMillis()
    val offset = TimeZone.getDefault().getOffset(wall) / 60_000
    Instant(wall, offset, System.nanoTime() / 1_000_000, boot)
}

private val boot: String =
    File("/proc/sys/kernel/random/boot_id").takeIf { it.canRead() }?.readText()?.trim()
        ?: "one run of a window"

/**
 * Opens a home folder in a window of a phone's size, or begins where there is none. Escape goes back; a
 * window that is pulled wide shows two panes.
 */
public fun main(arguments: Array<String>) {
    val home = arguments.firstOrNull() ?: error("Name a home folder.")
    application {
        val entry = remember { Entry(WindowPhone(File(home), clock)) }
        Window(
            onCloseRequest = {
                entry.shell?.close()
                exitApplication()
            },
            state = rememberWindowState(size = DpSize(390.dp, 844.dp)),
            title = "Holdfast",
            onPreviewKeyEvent = { it.type == KeyEventType.KeyUp && it.key == Key.Escape && entry.back() },
        ) {
            LaunchedEffect(entry) { entry.start() }
            HoldfastEntry(entry, isSystemInDarkTheme(), font())
        }
    }
}

/** The phone's font where Debian has it, otherwise the system's. */
private fun font(): FontFamily {
    val folder = File("/usr/share/fonts/truetype/roboto/unhinted/RobotoTTF")
    val weights =
        listOf(
            "Regular" to FontWeight.Normal,
            "Medium" to FontWeight.Medium,
            "Medium" to FontWeight.SemiBold,
            "Bold" to FontWeight.Bold,
        )
    val files = weights.map { (name, weight) -> File(folder, "Roboto-$name.ttf") to weight }
    if (!files.all { (file, _) -> file.canRead() }) return FontFamily.Default
    return FontFamily(files.map { (file, weight) -> Font(file, weight) })
}

package holdfast.app

import android.content.ContentResolver
import android.provider.Settings
import java.io.File
import java.io.IOException
import java.util.UUID

/**
 * Names the boot that runs: by the kernel's own name, or where a maker forbids that file by a number of this
 * install and the count of boots.
 *
 * The count alone is never a name: it is small, and a home that was taken to another phone can meet the same.
 * A boot keeps the name that it was given first, also where the file can be read at one start of the app and
 * not at the next.
 */
internal class BootName(
    private val folder: File,
    private val resolver: ContentResolver,
    private val kernel: File = File("/proc/sys/kernel/random/boot_id"),
) {
    /** The name. Read it once a process. */
    fun read(): String {
        val count = count()
        val kept = kept()
        val ofKernel = ofKernel()
        val name =
            when {
                // Android: the system can start anew under one kernel. The count rises then, the kernel's
                // name stays.
                ofKernel != null && kept?.name == ofKernel -> ofKernel
                // A name of the kernel's that is another one is proof of another boot, a name of ours is not.
                kept != null &&
                    count != null &&
                    kept.count == count &&
                    !(ofKernel != null && kept.isKernels) -> kept.name
                ofKernel != null -> ofKernel
                count != null -> "${UUID.randomUUID()}-$count"
                // Nothing tells boots apart: then each start of the app is one, and the wall clock has to do.
                else -> UUID.randomUUID().toString()
            }
        keep(Kept(count, name == ofKernel || kept?.isKernels == true && kept.name == name, name))
        return name
    }

    private class Kept(val count: Int?, val isKernels: Boolean, val name: String)

    private fun ofKernel(): String? =
        try {
            kernel.readText().trim().takeIf { it.isNotEmpty() }
        } catch (_: IOException) {
            null
        }

    private fun count(): Int? =
        try {
            Settings.Global.getInt(resolver, Settings.Global.BOOT_COUNT)
        } catch (_: Settings.SettingNotFoundException) {
            null
        }

    private fun kept(): Kept? {
        val lines =
            try {
                File(folder, FILE).readLines()
            } catch (_: IOException) {
                return null
            }
        if (lines.size != LINES || lines[2].isEmpty()) return null
        return Kept(lines[0].toIntOrNull(), lines[1] == KERNELS, lines[2])
    }

    private fun keep(now: Kept) {
        val text = listOf(now.count?.toString().orEmpty(), if (now.isKernels) KERNELS else "own", now.name)
        try {
            File(folder, FILE).writeText(text.joinToString("\n"))
        } catch (_: IOException) {
            // A full disk: the next start of the app may name this boot anew, and the core goes by the wall
            // clock.
        }
    }

    private companion object {
        const val FILE = "boot"
        const val KERNELS = "kernel"
        const val LINES = 3
    }
}

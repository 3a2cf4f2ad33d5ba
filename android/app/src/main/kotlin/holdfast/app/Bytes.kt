package holdfast.app

import java.io.ByteArrayOutputStream
import java.io.InputStream

/** Reads at most so many bytes. The library's own call for it is younger than the oldest phone. */
internal fun InputStream.upTo(most: Int): ByteArray {
    val read = ByteArrayOutputStream()
    val buffer = ByteArray(64 * 1024)
    while (read.size() < most) {
        val count = read(buffer, 0, minOf(buffer.size, most - read.size()))
        if (count < 0) break
        read.write(buffer, 0, count)
    }
    return read.toByteArray()
}

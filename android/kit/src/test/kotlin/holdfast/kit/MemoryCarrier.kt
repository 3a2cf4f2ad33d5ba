package holdfast.kit

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.ListedFile
import holdfast.core.UnreadFile

/** Carries files in memory. */
class MemoryCarrier : Carrier {
    val files = mutableMapOf<String, ByteArray>()

    /** Files that are listed and cannot be read. */
    val unreadable = mutableSetOf<String>()

    /** What happens at each listing before it is made. */
    var onList: suspend () -> Unit = {}

    override suspend fun list(): List<ListedFile> {
        onList()
        return files.entries.sortedBy { it.key }.map { ListedFile(it.key, it.value.size.toULong()) }
    }

    override suspend fun get(names: List<String>): ExchangeDid.Got {
        val (unread, read) = names.partition { it in unreadable }
        return ExchangeDid.Got(
            read.map { CarriedFile(it, files.getValue(it)) },
            unread.map { UnreadFile(it, "it is torn") },
        )
    }

    override suspend fun put(files: List<CarriedFile>): UInt {
        val new = files.count { it.name !in this.files }
        files.forEach { this.files[it.name] = it.content }
        return new.toUInt()
    }
}

package holdfast.kit

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.FailedFile
import holdfast.core.ListedFile

/** Carries files in memory. */
class MemoryCarrier : Carrier {
    val files = mutableMapOf<String, ByteArray>()

    /** Files that are listed and cannot be read. */
    val unreadable = mutableSetOf<String>()

    /** Which files cannot be written. */
    var unwritable: (name: String) -> Boolean = { false }

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
            unread.map { FailedFile(it, "it is torn") },
        )
    }

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put {
        val (unwritten, written) = files.partition { unwritable(it.name) }
        val new = written.count { it.name !in this.files }
        written.forEach { this.files[it.name] = it.content }
        return ExchangeDid.Put(new.toUInt(), unwritten.map { FailedFile(it.name, "it is full") })
    }
}

package holdfast.ui

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.ListedFile
import holdfast.kit.Carrier
import java.io.File

/** A folder that carries files. */
internal class FolderCarrier(private val folder: File) : Carrier {
    override suspend fun list(): List<ListedFile> =
        folder.listFiles().orEmpty().map { ListedFile(it.name, it.length().toULong()) }.sortedBy { it.name }

    override suspend fun get(names: List<String>): ExchangeDid.Got =
        ExchangeDid.Got(names.map { CarriedFile(it, File(folder, it).readBytes()) }, emptyList())

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put {
        val new = files.count { !File(folder, it.name).exists() }
        files.forEach { File(folder, it.name).writeBytes(it.content) }
        return ExchangeDid.Put(new.toUInt(), emptyList())
    }
}

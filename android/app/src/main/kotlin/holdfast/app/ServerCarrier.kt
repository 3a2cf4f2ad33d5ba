package holdfast.app

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.FailedFile
import holdfast.core.ListedFile
import holdfast.core.Server
import holdfast.core.ServerAnswer
import holdfast.core.ServerNext
import holdfast.core.ServerWant
import holdfast.kit.Carrier
import holdfast.kit.DeviceClock
import kotlinx.coroutines.delay

/**
 * A WebDAV or S3-compatible server as carrier. The core makes each request, reads each answer and says how
 * long to wait; this sends, brings and waits. [toLookInto] names those of the server's folders that have to
 * be listed.
 */
internal class ServerCarrier(
    private val server: Server,
    private val sender: HttpSender,
    private val clock: DeviceClock,
    private val toLookInto: suspend (List<String>) -> List<String>,
) : Carrier {
    override suspend fun list(): List<ListedFile> {
        val parts = all { ServerWant.Parts(it) }.flatMap { it.parts }
        return toLookInto(parts).flatMap { part -> all { ServerWant.Files(part, it) }.flatMap { it.files } }
    }

    override suspend fun get(names: List<String>): ExchangeDid.Got {
        val files = mutableListOf<CarriedFile>()
        val unread = mutableListOf<FailedFile>()
        for (name in names) {
            when (val came = does(ServerWant.Get(name))) {
                is ServerNext.Got -> came.content?.let { files += CarriedFile(name, it) }
                is ServerNext.Failed -> unread += FailedFile(name, alone(came))
                else -> {}
            }
        }
        return ExchangeDid.Got(files, unread)
    }

    override suspend fun put(files: List<CarriedFile>): ExchangeDid.Put {
        var written = 0u
        val unwritten = mutableListOf<FailedFile>()
        for (file in files) {
            when (val came = does(ServerWant.Put(file.name, file.content))) {
                is ServerNext.Put -> if (came.written) written += 1u
                is ServerNext.Failed -> unwritten += FailedFile(file.name, alone(came))
                else -> {}
            }
        }
        return ExchangeDid.Put(written, unwritten)
    }

    /** What is wrong with one file alone leaves the others; anything else ends the exchange. */
    private fun alone(failed: ServerNext.Failed): String =
        if (failed.ends) throw Carried(failed.reason) else failed.reason

    /** All pages of a listing. */
    private suspend fun all(want: (String?) -> ServerWant): List<ServerNext.Listed> {
        val pages = mutableListOf<ServerNext.Listed>()
        do {
            when (val came = does(want(pages.lastOrNull()?.after))) {
                is ServerNext.Listed -> pages += came
                is ServerNext.Failed -> throw Carried(came.reason)
                else -> return pages
            }
        } while (pages.last().after != null)
        return pages
    }

    private suspend fun does(want: ServerWant): ServerNext =
        server.begin(want).use { work ->
            var came: ServerAnswer = ServerAnswer.Begin
            while (true) {
                when (val next = work.next(came, clock.now())) {
                    is ServerNext.Send -> came = sender.send(next.request)
                    is ServerNext.Wait -> {
                        delay(next.length)
                        came = ServerAnswer.Begin
                    }
                    else -> return next
                }
            }
            @Suppress("UNREACHABLE_CODE") error("the loop ends by what is done")
        }
}

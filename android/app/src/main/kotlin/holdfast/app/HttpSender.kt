package holdfast.app

import android.net.Network
import holdfast.core.ServerAnswer
import holdfast.core.ServerHeader
import holdfast.core.ServerRequest
import java.io.IOException
import java.net.ConnectException
import java.net.NoRouteToHostException
import java.net.Proxy
import java.net.SocketException
import java.net.SocketTimeoutException
import java.net.UnknownHostException
import java.util.concurrent.TimeUnit
import javax.net.ssl.SSLException
import kotlin.coroutines.resume
import kotlinx.coroutines.suspendCancellableCoroutine
import okhttp3.Call
import okhttp3.Callback
import okhttp3.Dns
import okhttp3.OkHttpClient
import okhttp3.Request
import okhttp3.RequestBody.Companion.toRequestBody
import okhttp3.Response

/**
 * Sends a request of the core's and brings its answer. It follows nothing, adds nothing and keeps nothing.
 *
 * Android: the platform's own client refuses PROPFIND, MKCOL and MOVE, and every client makes a GET of a PUT
 * that is sent on to another place: the file would be lost, with an answer that says success.
 */
internal class HttpSender(network: Network? = null) {
    private val client =
        OkHttpClient.Builder()
            .followRedirects(false)
            .followSslRedirects(false)
            .retryOnConnectionFailure(false)
            .cache(null)
            .connectTimeout(CONNECT_S, TimeUnit.SECONDS)
            .readTimeout(ANSWER_S, TimeUnit.SECONDS)
            .writeTimeout(ANSWER_S, TimeUnit.SECONDS)
            .callTimeout(CALL_S, TimeUnit.SECONDS)
            .apply {
                // A job is given a network, which need not be the one that the phone uses for everything
                // else.
                if (network != null) socketFactory(network.socketFactory).dns(Of(network))
            }
            .build()

    /** What is not encrypted goes straight to its neighbour, through nobody's hands. */
    private val direct = client.newBuilder().proxy(Proxy.NO_PROXY).build()

    /** Sends it. A coroutine that is cancelled breaks the connection. */
    suspend fun send(request: ServerRequest): ServerAnswer = suspendCancellableCoroutine { waiting ->
        val made = Request.Builder().url(request.url).method(request.method, request.body?.toRequestBody())
        request.headers.forEach { made.header(it.name, it.value) }
        // Android: a body that was unpacked on the way has another length than its headers say.
        made.header("Accept-Encoding", "identity")
        val by = if (request.url.startsWith("http://")) direct else client
        val call = by.newCall(made.build())
        waiting.invokeOnCancellation { call.cancel() }
        call.enqueue(
            object : Callback {
                override fun onFailure(call: Call, e: IOException) = waiting.resume(unsent(e))

                override fun onResponse(call: Call, response: Response) =
                    waiting.resume(
                        try {
                            response.use { came(it, request.largest) }
                        } catch (error: IOException) {
                            unsent(error)
                        }
                    )
            }
        )
    }

    private fun came(response: Response, largest: ULong): ServerAnswer {
        val headers = response.headers.map { (name, value) -> ServerHeader(name, value) }
        val most = minOf(largest + 1u, Int.MAX_VALUE.toULong()).toInt()
        val body = response.body?.byteStream()?.upTo(most) ?: ByteArray(0)
        return ServerAnswer.Came(response.code.toUShort(), headers, body)
    }

    private class Of(private val network: Network) : Dns {
        override fun lookup(hostname: String) = network.getAllByName(hostname).toList()
    }

    companion object {
        private const val CONNECT_S = 20L
        private const val ANSWER_S = 90L
        private const val CALL_S = 600L

        /** What an error of the connection means. */
        fun unsent(error: IOException): ServerAnswer =
            when (error) {
                is UnknownHostException,
                is ConnectException,
                is NoRouteToHostException -> ServerAnswer.Offline
                // One whose cause is the connection's own broke on the way.
                is SSLException ->
                    if (error.cause is SocketException) ServerAnswer.Interrupted
                    else ServerAnswer.Untrusted(error.message.orEmpty())
                is SocketTimeoutException ->
                    if ("connect" in error.message.orEmpty()) ServerAnswer.Offline
                    else ServerAnswer.Interrupted
                else -> ServerAnswer.Interrupted
            }
    }
}

package holdfast.app

import com.sun.net.httpserver.HttpExchange
import com.sun.net.httpserver.HttpServer
import com.sun.net.httpserver.HttpsConfigurator
import com.sun.net.httpserver.HttpsServer
import holdfast.core.ServerAnswer
import holdfast.core.ServerHeader
import holdfast.core.ServerRequest
import java.io.File
import java.net.InetAddress
import java.net.InetSocketAddress
import java.net.ServerSocket
import java.security.KeyStore
import javax.net.ssl.KeyManagerFactory
import javax.net.ssl.SSLContext
import kotlin.concurrent.thread
import kotlin.test.AfterTest
import kotlin.test.Test
import kotlin.test.assertContentEquals
import kotlin.test.assertEquals
import kotlin.test.assertIs
import kotlinx.coroutines.runBlocking

/** What goes over the wire, against a plain server of the JVM's. */
class HttpSenderTest {
    private val asked = mutableListOf<String>()
    private var answer: (HttpExchange) -> Unit = { it.sendResponseHeaders(204, -1) }
    private var server: HttpServer =
        HttpServer.create(InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0).apply {
            createContext("/") { exchange ->
                val headers = exchange.requestHeaders
                val body = String(exchange.requestBody.readAllBytes())
                asked +=
                    "${exchange.requestMethod} ${exchange.requestURI} $body " +
                        listOf("Content-Length", "Accept-Encoding", "Depth", "Cookie", "Expect")
                            .joinToString { "$it=${headers.getFirst(it)}" }
                answer(exchange)
                exchange.close()
            }
            start()
        }
    private val base = "http://127.0.0.1:${server.address.port}"

    @AfterTest fun end() = server.stop(0)

    private fun send(method: String, path: String = "/x", body: String? = null, largest: Int = 1_000) =
        runBlocking {
            val headers = listOf(ServerHeader("Depth", "1"))
            HttpSender()
                .send(ServerRequest(method, base + path, headers, body?.toByteArray(), largest.toULong()))
        }

    @Test
    fun everyMethodOfWebDavGoesOutWithALengthAndPlain() {
        for ((method, body) in
            listOf("PROPFIND" to "<p/>", "MKCOL" to null, "MOVE" to null, "PUT" to "sealed")) {
            assertEquals(204u, assertIs<ServerAnswer.Came>(send(method, body = body)).status.toUInt())
            val line = asked.last()
            assertEquals(method, line.substringBefore(' '))
            if (body != null) assertEquals(true, "Content-Length=${body.length}," in line, line)
            assertEquals(true, "Accept-Encoding=identity, Depth=1, Cookie=null, Expect=null" in line, line)
        }
    }

    @Test
    fun noRedirectIsFollowed() {
        for (status in listOf(301, 302, 303, 307, 308)) {
            answer = {
                it.responseHeaders.set("Location", "$base/elsewhere")
                it.sendResponseHeaders(status, -1)
            }
            val came = assertIs<ServerAnswer.Came>(send("PUT", body = "sealed"))
            assertEquals(status, came.status.toInt())
            assertEquals("$base/elsewhere", came.headers.first { it.name.equals("location", true) }.value)
        }
        assertEquals(5, asked.size)
        assertEquals(true, asked.all { it.startsWith("PUT /x sealed") }, asked.toString())
    }

    @Test
    fun noMoreIsReadThanIsOfUse() {
        answer = {
            it.sendResponseHeaders(200, 0)
            runCatching { repeat(10_000) { _ -> it.responseBody.write(ByteArray(1_000)) } }
        }
        assertEquals(1_001, assertIs<ServerAnswer.Came>(send("GET")).body.size)
    }

    @Test
    fun whatIsPackedStaysAsItIs() {
        val packed = byteArrayOf(0x1f, 0x8b.toByte(), 8, 0, 1, 2, 3)
        answer = {
            it.responseHeaders.set("Content-Encoding", "gzip")
            it.sendResponseHeaders(200, packed.size.toLong())
            it.responseBody.write(packed)
        }
        assertContentEquals(packed, assertIs<ServerAnswer.Came>(send("GET")).body)
    }

    @Test
    fun nothingThatListensIsOfflineAndABrokenAnswerIsInterrupted() {
        answer = {
            it.sendResponseHeaders(200, 5_000)
            it.responseBody.write(ByteArray(10))
            it.responseBody.flush()
            server.stop(0)
        }
        assertEquals(ServerAnswer.Interrupted, send("GET", largest = 10_000))
        assertEquals(ServerAnswer.Offline, send("GET"))
        assertEquals(
            ServerAnswer.Offline,
            runBlocking {
                val nowhere = "https://no-such-host.invalid/x"
                HttpSender().send(ServerRequest("GET", nowhere, emptyList(), null, 10u))
            },
        )
    }

    private fun https(port: Int) = runBlocking {
        HttpSender().send(ServerRequest("PUT", "https://127.0.0.1:$port/x", emptyList(), byteArrayOf(1), 10u))
    }

    @Test
    fun aCertificateThatNobodyTrustsIsSaidAndNothingIsSent() {
        val store = File.createTempFile("own", ".p12").also { it.delete() }
        val keytool = File(System.getProperty("java.home"), "bin/keytool").path
        val made =
            "$keytool -genkeypair -alias own -keyalg EC -dname CN=127.0.0.1 -ext san=ip:127.0.0.1 " +
                "-storetype PKCS12 -storepass changeit -keystore ${store.path}"
        assertEquals(0, ProcessBuilder(made.split(' ')).redirectErrorStream(true).start().waitFor())
        val keys = KeyStore.getInstance(store, "changeit".toCharArray())
        val managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm())
        managers.init(keys, "changeit".toCharArray())
        val context = SSLContext.getInstance("TLS").apply { init(managers.keyManagers, null, null) }
        val secure = HttpsServer.create(InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0)
        secure.httpsConfigurator = HttpsConfigurator(context)
        var reached = false
        secure.createContext("/") { reached = true }
        secure.start()
        try {
            assertEquals(true, "path" in assertIs<ServerAnswer.Untrusted>(https(secure.address.port)).said)
            assertEquals(false, reached)
        } finally {
            secure.stop(0)
            store.delete()
        }
    }

    @Test
    fun aServerThatSpeaksNoTlsIsNotTrusted() {
        ServerSocket(0, 1, InetAddress.getLoopbackAddress()).use { plain ->
            thread {
                plain.accept().use {
                    it.getInputStream().read()
                    it.getOutputStream().write("HTTP/1.1 400 Bad Request\r\n\r\n".toByteArray())
                }
            }
            assertIs<ServerAnswer.Untrusted>(https(plain.localPort))
        }
    }

    @Test
    fun aPortThatIsTakenAndSilentIsNoAnswer() {
        ServerSocket(0, 1, InetAddress.getLoopbackAddress()).use { silent ->
            val waiting = runBlocking {
                kotlinx.coroutines.withTimeoutOrNull(500) {
                    HttpSender()
                        .send(
                            ServerRequest(
                                "GET",
                                "http://127.0.0.1:${silent.localPort}/",
                                emptyList(),
                                null,
                                10u,
                            )
                        )
                }
            }
            assertEquals(null, waiting, "a call that is called off ends at once")
        }
    }
}

package holdfast.app

import android.app.job.JobInfo
import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.app.job.JobService
import android.content.ComponentName
import android.content.Context
import android.net.NetworkCapabilities
import android.net.NetworkRequest
import holdfast.core.HoldfastException
import holdfast.core.PlatformTrouble
import holdfast.core.platformTrouble
import holdfast.kit.words
import java.io.IOException
import kotlinx.coroutines.Job
import kotlinx.coroutines.launch

/** Where a carrier is, as far as the system's networks are concerned. */
internal enum class Way(val jobId: Int) {
    /** A folder on the phone. */
    FOLDER(1),

    /** A server in the house, which is reached without internet. */
    HOUSE(2),

    /** A server on the internet. */
    INTERNET(3);

    companion object {
        /** The way to a carrier. */
        fun to(carrier: StoredCarrier): Way =
            when {
                !carrier.isServer -> FOLDER
                isOfTheHouse(carrier.address) -> HOUSE
                else -> INTERNET
            }

        /**
         * By the host alone: addresses of private networks (RFC 1918, RFC 4193, RFC 3927), and names that no
         * public one is.
         */
        fun isOfTheHouse(address: String): Boolean {
            val host = address.substringAfter("://").substringBefore('/').substringAfter('@')
            val name =
                if (host.startsWith("[")) host.drop(1).substringBefore(']') else host.substringBefore(':')
            val numbers = name.split('.').mapNotNull { it.toIntOrNull() }
            return when {
                numbers.size == IPV4 && name.count { it == '.' } == IPV4 - 1 ->
                    numbers[0] == 10 ||
                        numbers[0] == 127 ||
                        numbers[0] == 192 && numbers[1] == 168 ||
                        numbers[0] == 172 && numbers[1] in 16..31 ||
                        numbers[0] == 169 && numbers[1] == 254
                ':' in name ->
                    name.lowercase().let {
                        it.startsWith("fc") || it.startsWith("fd") || it.startsWith("fe8")
                    }
                else -> '.' !in name || name.endsWith(".local") || name.endsWith(".home.arpa")
            }
        }

        private const val IPV4 = 4
    }
}

/** Exchanges in the background, when the network that it takes is there. When that is, nobody can promise. */
internal class ExchangeJob : JobService() {
    private val app
        get() = application as HoldfastApplication

    private val running = mutableMapOf<Int, Job>()

    override fun onStartJob(parameters: JobParameters): Boolean {
        running[parameters.jobId] =
            app.scope.launch {
                val whole = exchange(parameters)
                running -= parameters.jobId
                jobFinished(parameters, !whole)
            }
        return true
    }

    /** The network went, or the time is over: what was taken in is kept, and the system tries again. */
    override fun onStopJob(parameters: JobParameters): Boolean {
        running.remove(parameters.jobId)?.cancel()
        return true
    }

    /** True where all carriers on this way were exchanged with. */
    private suspend fun exchange(parameters: JobParameters): Boolean {
        val phone = app.phone
        // A home that does not open says so on screen; until then there is nothing to exchange.
        val host =
            try {
                phone.open() ?: return true
            } catch (_: HoldfastException) {
                return true
            }
        val carriers = phone.stored().filter { Way.to(it).jobId == parameters.jobId }
        var whole = true
        for (carrier in carriers) {
            val what =
                try {
                    host.exchange(phone.reach(carrier.id, parameters.network))
                    null
                } catch (error: HoldfastException) {
                    error.words
                } catch (error: IOException) {
                    error.message.orEmpty()
                }
            app.unfinished.note(
                carrier.id,
                what?.let { platformTrouble(PlatformTrouble.ExchangeUnfinished(carrier.place, it)) },
            )
            if (what != null) whole = false
        }
        return whole
    }

    companion object {
        private const val FIRST_WAIT_MS = 30_000L

        /**
         * Asks the system for an exchange with these, each when there is a way to it. One that waits already
         * is kept.
         */
        fun schedule(context: Context, carriers: List<StoredCarrier>) {
            val jobs = context.getSystemService(JobScheduler::class.java)
            for (way in carriers.map(Way::to).toSet()) {
                if (jobs.getPendingJob(way.jobId) == null) jobs.schedule(job(context, way))
            }
        }

        /** The job for a way. */
        fun job(context: Context, way: Way): JobInfo {
            val job =
                JobInfo.Builder(way.jobId, ComponentName(context, ExchangeJob::class.java))
                    .setBackoffCriteria(FIRST_WAIT_MS, JobInfo.BACKOFF_POLICY_EXPONENTIAL)
                    .setPersisted(true)
            when (way) {
                // Android: a job needs some condition.
                Way.FOLDER -> job.setMinimumLatency(1)
                // Android: "any network" means one with internet that was tried, so a server in a cellar
                // would never be met.
                Way.HOUSE -> job.setRequiredNetwork(inTheHouse())
                Way.INTERNET -> job.setRequiredNetwork(internet())
            }
            return job.build()
        }

        private fun internet() =
            NetworkRequest.Builder()
                .addCapability(NetworkCapabilities.NET_CAPABILITY_INTERNET)
                .addCapability(NetworkCapabilities.NET_CAPABILITY_VALIDATED)
                .build()

        private fun inTheHouse() =
            NetworkRequest.Builder()
                .removeCapability(NetworkCapabilities.NET_CAPABILITY_INTERNET)
                .removeCapability(NetworkCapabilities.NET_CAPABILITY_VALIDATED)
                .addTransportType(NetworkCapabilities.TRANSPORT_WIFI)
                .addTransportType(NetworkCapabilities.TRANSPORT_ETHERNET)
                .build()
    }
}

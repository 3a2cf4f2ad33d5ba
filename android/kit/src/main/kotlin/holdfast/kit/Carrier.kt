package holdfast.kit

import holdfast.core.CarriedFile
import holdfast.core.ExchangeDid
import holdfast.core.ExchangeReport
import holdfast.core.ExchangeStep
import holdfast.core.ListedFile
import holdfast.core.Restore
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.currentCoroutineContext
import kotlinx.coroutines.ensureActive
import kotlinx.coroutines.withContext

/**
 * What takes files from device to device: a shared folder, a stick, a store on the net.
 *
 * It is called from the coroutine of [Host.exchange], and may take its time: taps go on meanwhile. What it
 * throws ends the exchange and reaches whoever asked for it; what was taken in by then is kept.
 */
public interface Carrier {
    /** The files that are there. */
    public suspend fun list(): List<ListedFile>

    /** Fetches files. One that is gone meanwhile is left out; one that cannot be read is named as unread. */
    public suspend fun get(names: List<String>): ExchangeDid.Got

    /**
     * Writes each file, unless its name is there with as many bytes. Counts those that were not there before,
     * and names those that cannot be written: one of them keeps nobody from bringing the others.
     */
    public suspend fun put(files: List<CarriedFile>): ExchangeDid.Put
}

/**
 * Looks through a carrier for what a recovery code opens, step by step. It lists and fetches, and writes
 * nothing.
 */
public suspend fun Restore.search(carrier: Carrier) {
    carrier.exchange { did -> withContext(Dispatchers.IO) { step(did) } }
}

/** Does what the core says, step by step, until both sides have everything. */
internal suspend fun Carrier.exchange(step: suspend (ExchangeDid) -> ExchangeStep): ExchangeReport {
    var did: ExchangeDid = ExchangeDid.Begin
    while (true) {
        currentCoroutineContext().ensureActive()
        did =
            when (val next = step(did)) {
                is ExchangeStep.ListFiles -> ExchangeDid.Listed(list())
                is ExchangeStep.Get -> get(next.names)
                is ExchangeStep.Put -> put(next.files)
                is ExchangeStep.Done -> return next.report
            }
    }
}

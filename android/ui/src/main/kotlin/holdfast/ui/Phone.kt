package holdfast.ui

import holdfast.core.PhoneChoices
import holdfast.core.Restore
import holdfast.core.Start
import holdfast.kit.Carrier
import holdfast.kit.Host

/**
 * What a phone can do besides showing screens. The app gives it from the system's own parts, a window and
 * tests give theirs.
 *
 * Nothing here decides anything. What somebody called off, as a chooser that was closed, is null.
 */
public interface Phone {
    /** Opens the home folder; null while nobody has started on this phone. Throws as [Host.open] does. */
    public suspend fun open(): Host?

    /** Makes the home folder for somebody who starts. Throws as [Host.start] does. */
    public suspend fun start(start: Start): Host

    /** Makes the home folder with what a recovery code found. Throws as [Host.restore] does. */
    public suspend fun restore(found: Restore): Host

    /** Bytes of chance from the system, to make keys of. */
    public fun chance(count: Int): ByteArray

    /** The carriers that are kept on this phone, in the order they were added. */
    public suspend fun carriers(): List<KeptCarrier>

    /** Lets somebody choose a folder with the system's chooser, and keeps it as a carrier. */
    public suspend fun keepFolder(): KeptCarrier?

    /** Keeps a server as a carrier: its secret where nothing else on the phone reads it. */
    public suspend fun keepServer(server: Server): KeptCarrier

    /** Forgets a carrier; nothing is deleted there. */
    public suspend fun forget(carrier: KeptCarrier)

    /** What exchanges files with a carrier that is kept. */
    public suspend fun reach(carrier: KeptCarrier): Carrier

    /** Reads a QR code with the camera. */
    public suspend fun scan(): String?

    /** Lets somebody choose a file, such as a plan. */
    public suspend fun chooseFile(): ChosenFile?

    /** How somebody wants this phone to look and sound; as it comes until they choose. */
    public fun choices(): PhoneChoices

    /** Keeps that, for good. */
    public fun choose(choices: PhoneChoices)

    /** Gives a cue now, as a clock would: to be seen, felt and heard beforehand. */
    public suspend fun tryCue()

    /** Hands a file to another app, as the system shares things. */
    public suspend fun share(file: ChosenFile)
}

/** A carrier that is kept on this phone. [place] is a folder's name or a server's address, to be shown. */
public data class KeptCarrier(val id: String, val place: String, val isServer: Boolean)

/** A server as somebody typed it. Nothing here is a data class, which would print what it holds. */
public sealed class Server {
    /** Where it is. */
    public abstract val address: String

    /** What only the server may be told. */
    public abstract val secret: String

    /** A folder on a WebDAV server; its secret is a password. */
    public class WebDav(override val address: String, public val user: String, override val secret: String) :
        Server()

    /** A bucket on an S3-compatible server, or a folder in it; its secret is that of a key. */
    public class S3(override val address: String, public val bucket: Bucket, override val secret: String) :
        Server()
}

/** Which bucket, and by which key. [folder] may be empty. */
public data class Bucket(val name: String, val region: String, val folder: String, val keyId: String)

/** A file by its name, with its bytes. */
public class ChosenFile(public val name: String, public val content: ByteArray)

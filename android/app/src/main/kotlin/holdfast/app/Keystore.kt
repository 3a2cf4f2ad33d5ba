package holdfast.app

import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyProperties
import android.security.keystore.StrongBoxUnavailableException
import java.io.File
import java.io.IOException
import java.security.GeneralSecurityException
import java.security.KeyStore
import java.security.SecureRandom
import javax.crypto.AEADBadTagException
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey
import javax.crypto.spec.GCMParameterSpec

/**
 * Keeps small secrets as files that only a key inside the phone's own keystore opens: the 32 bytes that the
 * home is wrapped with, and what signs in at servers.
 */
internal class Keystore(private val folder: File, private val random: SecureRandom = SecureRandom()) {
    /**
     * Draws the key for somebody who starts, and keeps it. One that the phone lost is moved aside, not
     * deleted.
     */
    fun begin(): ByteArray {
        open(DATA_KEY)?.let {
            return it
        }
        val lost = File(folder, DATA_KEY)
        if (lost.exists()) lost.renameTo(File(folder, "$DATA_KEY.lost-${lost.lastModified()}"))
        val key = ByteArray(KEY_BYTES).also(random::nextBytes)
        keep(DATA_KEY, key)
        return key
    }

    /**
     * The key of a home that is there. Where the phone has lost it, bytes that open nothing: the core then
     * says so in its own sentence, and leaves the home as it is.
     */
    fun key(): ByteArray = open(DATA_KEY)?.takeIf { it.size == KEY_BYTES } ?: notTheKey()

    /** Keeps a secret by a name. */
    fun keep(name: String, secret: ByteArray) {
        val cipher = Cipher.getInstance(AES)
        cipher.init(Cipher.ENCRYPT_MODE, wrapping() ?: made())
        val wrapped = cipher.doFinal(secret)
        val file = File(folder, name)
        val part = File(folder, "$name.part")
        part.outputStream().use {
            it.write(cipher.iv.size)
            it.write(cipher.iv)
            it.write(wrapped)
            it.fd.sync()
        }
        if (!part.renameTo(file)) throw IOException(file.path)
    }

    /**
     * A secret by its name; null where there is none, or where the phone has lost what opens it. Deletes
     * nothing.
     */
    fun open(name: String): ByteArray? {
        val bytes =
            try {
                File(folder, name).readBytes()
            } catch (_: IOException) {
                return null
            }
        // Android: calls into the keystore fail now and then on some makers' phones, and work a moment later.
        repeat(TRIES) {
            try {
                return opened(bytes, wrapping() ?: return null)
            } catch (_: AEADBadTagException) {
                return null
            } catch (_: GeneralSecurityException) {} catch (_: RuntimeException) {}
        }
        return null
    }

    /** Forgets a secret. */
    fun forget(name: String) {
        File(folder, name).delete()
    }

    private fun opened(bytes: ByteArray, key: SecretKey): ByteArray? {
        val nonce = bytes.firstOrNull()?.toInt() ?: return null
        if (nonce !in 1 until bytes.size) return null
        val cipher = Cipher.getInstance(AES)
        cipher.init(Cipher.DECRYPT_MODE, key, GCMParameterSpec(TAG_BITS, bytes, 1, nonce))
        return cipher.doFinal(bytes, 1 + nonce, bytes.size - 1 - nonce)
    }

    private fun wrapping(): SecretKey? {
        val store = KeyStore.getInstance(PROVIDER).apply { load(null) }
        return store.getKey(ALIAS, null) as SecretKey?
    }

    private fun made(): SecretKey =
        try {
            made(strongBox = true)
        } catch (_: StrongBoxUnavailableException) {
            made(strongBox = false)
        }

    /**
     * Android: a key that asks for a finger or a code is destroyed when the screen lock is turned off, and
     * one that asks for an unlocked phone would stop what runs behind a locked screen. So this asks for
     * neither.
     */
    private fun made(strongBox: Boolean): SecretKey {
        val spec =
            KeyGenParameterSpec.Builder(ALIAS, KeyProperties.PURPOSE_ENCRYPT or KeyProperties.PURPOSE_DECRYPT)
                .setKeySize(KEY_BYTES * Byte.SIZE_BITS)
                .setBlockModes(KeyProperties.BLOCK_MODE_GCM)
                .setEncryptionPaddings(KeyProperties.ENCRYPTION_PADDING_NONE)
                .setIsStrongBoxBacked(strongBox)
                .build()
        val generator = KeyGenerator.getInstance(KeyProperties.KEY_ALGORITHM_AES, PROVIDER)
        generator.init(spec)
        return generator.generateKey()
    }

    private fun notTheKey(): ByteArray = ByteArray(KEY_BYTES).also(random::nextBytes)

    private companion object {
        const val PROVIDER = "AndroidKeyStore"
        const val ALIAS = "holdfast"
        const val AES = "AES/GCM/NoPadding"
        const val DATA_KEY = "data-key"
        const val KEY_BYTES = 32
        const val TAG_BITS = 128
        const val TRIES = 3
    }
}

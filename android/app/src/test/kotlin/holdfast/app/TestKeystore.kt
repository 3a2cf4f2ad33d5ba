package holdfast.app

import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.StrongBoxUnavailableException
import java.io.InputStream
import java.io.OutputStream
import java.security.Key
import java.security.KeyStoreSpi
import java.security.Provider
import java.security.SecureRandom
import java.security.Security
import java.security.cert.Certificate
import java.security.spec.AlgorithmParameterSpec
import java.util.Collections
import java.util.Date
import java.util.Enumeration
import javax.crypto.KeyGeneratorSpi
import javax.crypto.SecretKey
import javax.crypto.spec.SecretKeySpec

/** Stands for the phone's own keystore, which no machine but a phone has. */
class TestKeystore : Provider("AndroidKeyStore", "1", "keys in memory") {
    init {
        put("KeyStore.AndroidKeyStore", Keys::class.java.name)
        put("KeyGenerator.AES", Generator::class.java.name)
    }

    /** The keys there are. */
    class Keys : KeyStoreSpi() {
        override fun engineLoad(from: InputStream?, password: CharArray?) = Unit

        override fun engineGetKey(alias: String, password: CharArray?): Key? {
            if (failures > 0) {
                failures -= 1
                throw java.security.UnrecoverableKeyException("busy")
            }
            return keys[alias]
        }

        override fun engineAliases(): Enumeration<String> = Collections.enumeration(keys.keys)

        override fun engineContainsAlias(alias: String) = alias in keys

        override fun engineSize() = keys.size

        override fun engineIsKeyEntry(alias: String) = alias in keys

        override fun engineIsCertificateEntry(alias: String) = false

        override fun engineGetCertificateAlias(certificate: Certificate?): String? = null

        override fun engineGetCertificateChain(alias: String): Array<Certificate>? = null

        override fun engineGetCertificate(alias: String): Certificate? = null

        override fun engineGetCreationDate(alias: String): Date? = null

        override fun engineDeleteEntry(alias: String) {
            keys -= alias
        }

        override fun engineSetKeyEntry(a: String, k: Key, p: CharArray?, c: Array<Certificate>?) = Unit

        override fun engineSetKeyEntry(a: String, k: ByteArray, c: Array<Certificate>?) = Unit

        override fun engineSetCertificateEntry(a: String, c: Certificate) = Unit

        override fun engineStore(to: OutputStream?, password: CharArray?) = Unit
    }

    /** Makes them. */
    class Generator : KeyGeneratorSpi() {
        private lateinit var asked: KeyGenParameterSpec

        override fun engineInit(random: SecureRandom?) = error("no spec")

        override fun engineInit(size: Int, random: SecureRandom?) = error("no spec")

        override fun engineInit(spec: AlgorithmParameterSpec, random: SecureRandom?) {
            asked = spec as KeyGenParameterSpec
        }

        override fun engineGenerateKey(): SecretKey {
            specs += asked
            if (asked.isStrongBoxBacked && !hasStrongBox) throw StrongBoxUnavailableException()
            val key = SecretKeySpec(ByteArray(32).also(SecureRandom()::nextBytes), "AES")
            keys[asked.keystoreAlias] = key
            return key
        }
    }

    companion object {
        private val keys = mutableMapOf<String, SecretKey>()
        val specs = mutableListOf<KeyGenParameterSpec>()
        var hasStrongBox = true
        var failures = 0

        /** A phone as it is new. */
        fun begin() {
            lose()
            specs.clear()
            hasStrongBox = true
            failures = 0
            if (Security.getProvider("AndroidKeyStore") == null) Security.addProvider(TestKeystore())
        }

        /** What happens to a home that was carried to another phone. */
        fun lose() = keys.clear()
    }
}

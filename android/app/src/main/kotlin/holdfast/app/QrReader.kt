package holdfast.app

import com.google.zxing.BarcodeFormat
import com.google.zxing.BinaryBitmap
import com.google.zxing.DecodeHintType
import com.google.zxing.PlanarYUVLuminanceSource
import com.google.zxing.ReaderException
import com.google.zxing.common.HybridBinarizer
import com.google.zxing.qrcode.QRCodeReader

/** Finds a QR code in the grey plane of a camera's picture. */
internal class QrReader {
    private val reader = QRCodeReader()

    /**
     * The text of the code that is in the picture; null where there is none. [stride] is a row's length in
     * bytes.
     */
    fun read(grey: ByteArray, stride: Int, width: Int, height: Int): String? {
        // A last row may end before its stride does.
        if (width > stride || grey.size < stride * (height - 1) + width) return null
        val rows = grey.size / stride
        val seen = PlanarYUVLuminanceSource(grey, stride, maxOf(rows, height), 0, 0, width, height, false)
        return try {
            reader.decode(BinaryBitmap(HybridBinarizer(seen)), HINTS).text
        } catch (_: ReaderException) {
            null
        } finally {
            reader.reset()
        }
    }

    private companion object {
        val HINTS =
            mapOf(
                DecodeHintType.TRY_HARDER to true,
                DecodeHintType.POSSIBLE_FORMATS to listOf(BarcodeFormat.QR_CODE),
            )
    }
}

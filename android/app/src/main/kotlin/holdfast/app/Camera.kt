package holdfast.app

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.ImageFormat
import android.graphics.SurfaceTexture
import android.hardware.camera2.CameraAccessException
import android.hardware.camera2.CameraCaptureSession
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraDevice
import android.hardware.camera2.CameraManager
import android.hardware.camera2.CaptureRequest
import android.media.ImageReader
import android.os.Handler
import android.os.HandlerThread
import android.util.Size
import android.view.Surface

/** The camera at the back, and a code that it sees. [failed] is told once when there is no picture. */
internal class Camera(context: Context, private val found: (String) -> Unit, private val failed: () -> Unit) {
    private val manager = context.getSystemService(CameraManager::class.java)
    private val thread = HandlerThread("camera").apply { start() }
    private val handler = Handler(thread.looper)
    private val reader = QrReader()
    private var device: CameraDevice? = null
    private var pictures: ImageReader? = null
    private var grey = ByteArray(0)

    /** Opens it and shows what it sees. */
    @SuppressLint("MissingPermission")
    fun open(shown: SurfaceTexture) {
        try {
            val id = back() ?: return failed()
            manager.openCamera(id, Opened(shown, size(id)), handler)
        } catch (_: CameraAccessException) {
            failed()
        } catch (_: SecurityException) {
            failed()
        } catch (_: IllegalArgumentException) {
            failed()
        }
    }

    /** Closes it. */
    fun close() {
        handler.post {
            device?.close()
            device = null
            pictures?.close()
            pictures = null
        }
        thread.quitSafely()
    }

    private fun back(): String? {
        val ids = manager.cameraIdList
        return ids.firstOrNull { facing(it) == CameraCharacteristics.LENS_FACING_BACK } ?: ids.firstOrNull()
    }

    private fun facing(id: String) =
        manager.getCameraCharacteristics(id).get(CameraCharacteristics.LENS_FACING)

    /** Large enough for a code of 57 modules at arm's length, small enough to be read many times a second. */
    private fun size(id: String): Size {
        val map =
            manager.getCameraCharacteristics(id).get(CameraCharacteristics.SCALER_STREAM_CONFIGURATION_MAP)
        val sizes = map?.getOutputSizes(ImageFormat.YUV_420_888).orEmpty()
        return sizes.filter { it.width <= WIDEST }.maxByOrNull { it.width * it.height }
            ?: Size(WIDEST, WIDEST * 3 / 4)
    }

    private inner class Opened(private val shown: SurfaceTexture, private val size: Size) :
        CameraDevice.StateCallback() {
        override fun onOpened(camera: CameraDevice) {
            device = camera
            shown.setDefaultBufferSize(size.width, size.height)
            val view = Surface(shown)
            val into =
                ImageReader.newInstance(size.width, size.height, ImageFormat.YUV_420_888, HELD).also {
                    it.setOnImageAvailableListener(::look, handler)
                }
            pictures = into
            try {
                val request = camera.createCaptureRequest(CameraDevice.TEMPLATE_PREVIEW)
                request.addTarget(view)
                request.addTarget(into.surface)
                request.set(CaptureRequest.CONTROL_AF_MODE, CaptureRequest.CONTROL_AF_MODE_CONTINUOUS_PICTURE)
                // Android: the call that takes a configuration object is younger than the oldest phone's
                // behaviour of it.
                @Suppress("DEPRECATION")
                camera.createCaptureSession(listOf(view, into.surface), Runs(request), handler)
            } catch (_: CameraAccessException) {
                failed()
            }
        }

        override fun onDisconnected(camera: CameraDevice) {
            camera.close()
            failed()
        }

        override fun onError(camera: CameraDevice, error: Int) {
            camera.close()
            failed()
        }
    }

    private inner class Runs(private val request: CaptureRequest.Builder) :
        CameraCaptureSession.StateCallback() {
        override fun onConfigured(session: CameraCaptureSession) {
            try {
                session.setRepeatingRequest(request.build(), null, handler)
            } catch (_: CameraAccessException) {
                failed()
            } catch (_: IllegalStateException) {
                // Closed meanwhile.
            }
        }

        override fun onConfigureFailed(session: CameraCaptureSession) {
            failed()
        }
    }

    /** Looks at the newest picture; those that came meanwhile are let go. */
    private fun look(from: ImageReader) {
        val image = from.acquireLatestImage() ?: return
        image
            .use {
                val plane = it.planes[0]
                val bytes = plane.buffer
                if (grey.size != bytes.remaining()) grey = ByteArray(bytes.remaining())
                bytes.get(grey)
                reader.read(grey, plane.rowStride, it.width, it.height)
            }
            ?.let(found)
    }

    private companion object {
        const val WIDEST = 1280
        const val HELD = 2
    }
}

package holdfast.app

import android.app.Activity
import android.content.Intent
import android.graphics.Color
import android.graphics.SurfaceTexture
import android.os.Bundle
import android.view.Gravity
import android.view.TextureView
import android.view.WindowManager
import android.widget.FrameLayout
import android.widget.TextView
import holdfast.core.platformWords

/**
 * What the camera sees, until a code is in it. Its answer is the code's text, or what kept it from looking.
 */
internal class ScanActivity : Activity(), TextureView.SurfaceTextureListener {
    private var camera: Camera? = null

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        val view = TextureView(this).also { it.surfaceTextureListener = this }
        val caption =
            TextView(this).apply {
                text = platformWords().scanHere
                textSize = CAPTION_SP
                setTextColor(Color.WHITE)
                setBackgroundColor(Color.BLACK)
                setPadding(MARGIN, MARGIN, MARGIN, MARGIN)
            }
        val below = FrameLayout.LayoutParams.WRAP_CONTENT
        setContentView(
            FrameLayout(this).apply {
                addView(view)
                addView(
                    caption,
                    FrameLayout.LayoutParams(FrameLayout.LayoutParams.MATCH_PARENT, below, Gravity.TOP),
                )
                fitsSystemWindows = true
            }
        )
    }

    /** A code was seen. */
    fun found(text: String): Unit = answers(TEXT, text)

    /** There is no picture. */
    fun failed(): Unit = answers(TROUBLE, platformWords().noCamera)

    override fun onSurfaceTextureAvailable(surface: SurfaceTexture, width: Int, height: Int) {
        camera =
            Camera(this, { text -> runOnUiThread { found(text) } }, { runOnUiThread(::failed) }).also {
                it.open(surface)
            }
    }

    override fun onSurfaceTextureSizeChanged(surface: SurfaceTexture, width: Int, height: Int): Unit = Unit

    override fun onSurfaceTextureDestroyed(surface: SurfaceTexture): Boolean {
        camera?.close()
        camera = null
        return true
    }

    override fun onSurfaceTextureUpdated(surface: SurfaceTexture): Unit = Unit

    private fun answers(name: String, value: String) {
        if (isFinishing) return
        setResult(RESULT_OK, Intent().putExtra(name, value))
        finish()
    }

    companion object {
        /** The code's text. */
        const val TEXT: String = "text"

        /** What kept it from looking, as a sentence. */
        const val TROUBLE: String = "trouble"

        private const val CAPTION_SP = 20f
        private const val MARGIN = 32
    }
}

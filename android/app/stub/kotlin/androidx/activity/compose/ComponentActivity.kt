package androidx.activity.compose

import android.widget.FrameLayout
import androidx.activity.ComponentActivity
import androidx.compose.runtime.Composable

/**
 * Stands for the function of this name in `androidx.activity.compose`: it takes the content and draws none of
 * it.
 */
public fun ComponentActivity.setContent(content: @Composable () -> Unit) {
    setContentView(FrameLayout(this).apply { tag = content })
}

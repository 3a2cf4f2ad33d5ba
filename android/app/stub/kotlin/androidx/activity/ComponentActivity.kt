package androidx.activity

import android.app.Activity

/**
 * Stands for the class of this name in `androidx.activity`, where that cannot be had: see `HoldfastActivity`.
 */
public open class ComponentActivity : Activity()

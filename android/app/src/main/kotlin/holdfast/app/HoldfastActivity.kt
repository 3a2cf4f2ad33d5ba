package holdfast.app

import android.Manifest
import android.app.KeyguardManager
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.content.IntentFilter
import android.graphics.Insets
import android.os.Build
import android.os.Bundle
import android.view.View
import android.view.WindowInsets
import android.view.WindowManager
import android.window.OnBackInvokedDispatcher
import androidx.activity.ComponentActivity
import androidx.compose.runtime.snapshotFlow
import holdfast.core.platformWords
import holdfast.kit.LibraryUnusable
import holdfast.ui.Place
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancel
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.combine
import kotlinx.coroutines.launch

/** The one window. All that is in it lives in [HoldfastApplication], so it may be made anew at any time. */
public class HoldfastActivity : ComponentActivity() {
    private val app
        get() = application as HoldfastApplication

    private val scope = CoroutineScope(SupervisorJob() + MainThread)
    private val bars = MutableStateFlow(Bars(0, 0, 0, 0))

    /** Somebody set the clock, or travelled: what shows a time is drawn again. */
    private val timeWasSet =
        object : BroadcastReceiver() {
            override fun onReceive(context: Context, intent: Intent) {
                app.watch.wallClockWasSet()
                scope.launch { app.entry.shell?.look() }
            }
        }

    /** Whoever unlocked the phone may read all of it. */
    private val wasUnlocked =
        object : BroadcastReceiver() {
            override fun onReceive(context: Context, intent: Intent) = isLocked()
        }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        app.asking.attach(this)
        drawBehindBars()
        show(this, app, bars)
        val times =
            IntentFilter(Intent.ACTION_TIME_CHANGED).apply { addAction(Intent.ACTION_TIMEZONE_CHANGED) }
        registerReceiver(timeWasSet, times)
        registerReceiver(wasUnlocked, IntentFilter(Intent.ACTION_USER_PRESENT))
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            // Android: the old call comes no more to apps of today.
            onBackInvokedDispatcher.registerOnBackInvokedCallback(
                OnBackInvokedDispatcher.PRIORITY_DEFAULT,
                ::back,
            )
        }
        scope.launch { opens() }
        scope.launch { clockIsShown().collect(::overLock) }
        scope.launch { app.watch.shown.collect { if (it != null) askForNotifications() } }
        val unsaid = app.unfinished.take()
        if (unsaid.isNotEmpty()) app.tell(unsaid.joinToString("\n"))
    }

    private suspend fun opens() {
        app.entry.shell?.let {
            // The phone may speak another language by now.
            return it.again()
        }
        try {
            app.entry.start()
        } catch (error: LibraryUnusable) {
            app.tell(error.message)
        }
    }

    override fun onResume() {
        super.onResume()
        isLocked()
        // A clock went on meanwhile, and an exchange may have brought a plan.
        scope.launch { app.entry.shell?.look() }
    }

    private fun isLocked() {
        val guard = getSystemService(KeyguardManager::class.java)
        app.entry.shell?.locked = guard.isKeyguardLocked
    }

    override fun onStop() {
        super.onStop()
        // Turned, it is there again at once.
        if (!isChangingConfigurations) app.scope.launch { app.leaves() }
    }

    override fun onDestroy() {
        super.onDestroy()
        unregisterReceiver(timeWasSet)
        unregisterReceiver(wasUnlocked)
        app.asking.detach(this)
        scope.cancel()
    }

    @Deprecated("The system calls it on phones older than Android 13")
    override fun onBackPressed(): Unit = back()

    @Deprecated("Asks through what every version of the system has")
    override fun onActivityResult(code: Int, result: Int, data: Intent?) {
        super.onActivityResult(code, result, data)
        app.asking.answered(code, result, data)
    }

    override fun onRequestPermissionsResult(code: Int, permissions: Array<out String>, results: IntArray) {
        super.onRequestPermissionsResult(code, permissions, results)
        app.asking.permitted(code, results)
    }

    /** One step back; from home to the phone's own, and no clock ends by it. */
    private fun back() {
        if (!app.entry.back()) moveTaskToBack(true)
    }

    /** True while the clock that runs is what is on screen, and nothing lies over it. */
    private fun clockIsShown() =
        combine(app.watch.shown, snapshotFlow { isAtTheClock() }) { clock, here -> clock != null && here }

    private fun isAtTheClock(): Boolean {
        val shell = app.entry.shell ?: return false
        return shell.place == Place.SESSION && shell.asked == null && shell.pages.shown == null && !shell.more
    }

    /**
     * Over the lock screen anybody reads: the screens draw the clock alone there, and nothing once it is
     * left.
     */
    private fun overLock(shown: Boolean) {
        setShowWhenLocked(shown)
        if (shown) window.addFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
        else window.clearFlags(WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)
    }

    /**
     * Asked once, at the first clock, when it is plain what for. Denied, the clock runs on and is shown
     * nowhere else.
     */
    private suspend fun askForNotifications() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU) return
        val asked = getSharedPreferences("asked", MODE_PRIVATE)
        if (asked.getBoolean(NOTIFICATIONS, false)) return
        asked.edit().putBoolean(NOTIFICATIONS, true).apply()
        if (!app.asking.permission(Manifest.permission.POST_NOTIFICATIONS)) {
            app.tell(platformWords().noNotification)
        }
    }

    private fun drawBehindBars() {
        val root = window.decorView
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
            window.setDecorFitsSystemWindows(false)
        } else {
            @Suppress("DEPRECATION")
            root.systemUiVisibility =
                View.SYSTEM_UI_FLAG_LAYOUT_STABLE or
                    View.SYSTEM_UI_FLAG_LAYOUT_FULLSCREEN or
                    View.SYSTEM_UI_FLAG_LAYOUT_HIDE_NAVIGATION
        }
        root.setOnApplyWindowInsetsListener { view, insets ->
            bars.value = barsOf(insets)
            view.onApplyWindowInsets(insets)
        }
    }

    private fun barsOf(insets: WindowInsets): Bars {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
            val of =
                WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout() or WindowInsets.Type.ime()
            val around: Insets = insets.getInsets(of)
            return Bars(around.left, around.top, around.right, around.bottom)
        }
        @Suppress("DEPRECATION")
        return Bars(
            insets.systemWindowInsetLeft,
            insets.systemWindowInsetTop,
            insets.systemWindowInsetRight,
            insets.systemWindowInsetBottom,
        )
    }

    private companion object {
        const val NOTIFICATIONS = "notifications"
    }
}

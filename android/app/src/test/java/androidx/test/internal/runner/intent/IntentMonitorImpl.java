package androidx.test.internal.runner.intent;

import android.content.Intent;
import androidx.test.runner.intent.IntentMonitor;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class IntentMonitorImpl implements IntentMonitor {
    public void signalIntent(Intent intent) {}
}

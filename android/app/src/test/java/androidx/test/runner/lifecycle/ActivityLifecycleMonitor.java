package androidx.test.runner.lifecycle;

import android.app.Activity;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public interface ActivityLifecycleMonitor {
    Stage getLifecycleStageOf(Activity activity);
}

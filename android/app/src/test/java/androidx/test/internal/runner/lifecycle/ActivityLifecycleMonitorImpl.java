package androidx.test.internal.runner.lifecycle;

import android.app.Activity;
import androidx.test.runner.lifecycle.ActivityLifecycleMonitor;
import androidx.test.runner.lifecycle.Stage;
import java.util.Map;
import java.util.WeakHashMap;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class ActivityLifecycleMonitorImpl implements ActivityLifecycleMonitor {
    private final Map<Activity, Stage> stages = new WeakHashMap<>();

    public ActivityLifecycleMonitorImpl() {}

    public ActivityLifecycleMonitorImpl(boolean anyThread) {}

    @Override
    public Stage getLifecycleStageOf(Activity activity) {
        return stages.getOrDefault(activity, Stage.PRE_ON_CREATE);
    }

    public void signalLifecycleChange(Stage stage, Activity activity) {
        stages.put(activity, stage);
    }
}

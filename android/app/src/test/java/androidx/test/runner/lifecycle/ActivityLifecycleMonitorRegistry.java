package androidx.test.runner.lifecycle;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class ActivityLifecycleMonitorRegistry {
    private static ActivityLifecycleMonitor monitor;

    private ActivityLifecycleMonitorRegistry() {}

    public static void registerInstance(ActivityLifecycleMonitor registered) {
        monitor = registered;
    }

    public static ActivityLifecycleMonitor getInstance() {
        return monitor;
    }
}

package androidx.test.runner.lifecycle;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class ApplicationLifecycleMonitorRegistry {
    private static ApplicationLifecycleMonitor monitor;

    private ApplicationLifecycleMonitorRegistry() {}

    public static void registerInstance(ApplicationLifecycleMonitor registered) {
        monitor = registered;
    }

    public static ApplicationLifecycleMonitor getInstance() {
        return monitor;
    }
}

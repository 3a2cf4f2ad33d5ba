package androidx.test.runner.lifecycle;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public enum Stage {
    PRE_ON_CREATE,
    CREATED,
    STARTED,
    RESUMED,
    PAUSED,
    STOPPED,
    RESTARTED,
    DESTROYED
}

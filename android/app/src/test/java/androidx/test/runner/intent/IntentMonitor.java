package androidx.test.runner.intent;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public interface IntentMonitor {}

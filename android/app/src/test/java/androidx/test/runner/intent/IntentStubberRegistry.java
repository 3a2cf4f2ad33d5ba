package androidx.test.runner.intent;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class IntentStubberRegistry {
    private IntentStubberRegistry() {}

    public static boolean isLoaded() {
        return false;
    }

    public static IntentStubber getInstance() {
        throw new IllegalStateException("none is loaded");
    }
}

package androidx.test.platform.app;

import android.app.Instrumentation;
import android.os.Bundle;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public final class InstrumentationRegistry {
    private static Instrumentation instrumentation;
    private static Bundle arguments = new Bundle();

    private InstrumentationRegistry() {}

    public static void registerInstance(Instrumentation registered, Bundle given) {
        instrumentation = registered;
        arguments = given;
    }

    public static Instrumentation getInstrumentation() {
        if (instrumentation == null) throw new IllegalStateException("nothing is registered");
        return instrumentation;
    }

    public static Bundle getArguments() {
        return new Bundle(arguments);
    }
}

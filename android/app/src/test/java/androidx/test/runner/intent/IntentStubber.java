package androidx.test.runner.intent;

import android.app.Instrumentation.ActivityResult;
import android.content.Intent;

/** Stands in for the type of this name in androidx.test, which Robolectric calls and only Google's repository has. */
public interface IntentStubber {
    ActivityResult getActivityResultForIntent(Intent intent);
}

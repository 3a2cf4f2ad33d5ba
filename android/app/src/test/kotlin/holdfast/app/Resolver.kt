package holdfast.app

import android.content.ContentResolver
import android.os.Bundle
import org.robolectric.annotation.Implementation
import org.robolectric.annotation.Implements
import org.robolectric.shadows.ShadowContentResolver

/**
 * Brings the calls that make, rename and delete documents to their provider; Robolectric's own answers them
 * with nothing.
 */
@Implements(ContentResolver::class)
class Resolver : ShadowContentResolver() {
    @Implementation
    fun call(authority: String, method: String, argument: String?, extras: Bundle?): Bundle? =
        getProvider(android.net.Uri.parse("content://$authority"))?.call(method, argument, extras)
}

// The screens, with Compose for Android in the place of Compose for the JVM. The sources use what both have.
plugins {
    id("com.android.library")
    kotlin("android")
    kotlin("plugin.compose")
}

android {
    namespace = "holdfast.ui"
    compileSdk = 36
    defaultConfig { minSdk = 28 }
    sourceSets["main"].kotlin.srcDir("src/main/kotlin")
    sourceSets["test"].kotlin.setSrcDirs(emptyList<String>())
}

kotlin { jvmToolchain(17) }

dependencies {
    api(project(":kit"))
    api(platform("androidx.compose:compose-bom:2025.10.00"))
    api("androidx.compose.foundation:foundation")
    api("androidx.compose.material3:material3")
    api("androidx.compose.ui:ui")
}

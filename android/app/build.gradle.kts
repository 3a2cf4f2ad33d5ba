plugins {
    id("com.android.application")
    kotlin("android")
    kotlin("plugin.compose")
}

android {
    namespace = "holdfast.app"
    compileSdk = 36
    // From r28 on its linker lays libraries out for pages of 16 KB.
    ndkVersion = "28.2.13676358"

    defaultConfig {
        applicationId = "holdfast.app"
        minSdk = 28
        targetSdk = 36
        versionCode = 1
        versionName = "0.1.0"
        // The same as bindings/task/src/android.rs: JNA's archive has more.
        ndk { abiFilters += listOf("arm64-v8a", "armeabi-v7a", "x86_64") }
    }

    buildTypes {
        release {
            isMinifyEnabled = true
            isShrinkResources = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "rules.pro")
        }
    }

    sourceSets["main"].apply {
        kotlin.srcDir("src/main/kotlin")
        // What `cargo task android` builds.
        jniLibs.srcDir("../kit/src/main/jniLibs")
    }
    // The checks run by Maven, on Android's classes without a phone; stub/ is for them alone.
    sourceSets["test"].kotlin.setSrcDirs(emptyList<String>())
    sourceSets["test"].java.setSrcDirs(emptyList<String>())

    // Libraries stay unpacked in the package, at pages of 16 KB.
    packaging { jniLibs.useLegacyPackaging = false }
    // What the generated code asks of Java 13 and later is behind a check of its own, and lint cannot see that.
    lint { disable += "NewApi" }
}

kotlin { jvmToolchain(17) }

dependencies {
    implementation(project(":ui"))
    implementation("androidx.activity:activity-compose:1.11.0")
    implementation("com.google.zxing:core:3.5.3")
    // The last line that is one jar for every JVM: what the checks ran is what is shipped.
    implementation("com.squareup.okhttp3:okhttp:4.12.0")
    implementation("net.java.dev.jna:jna:5.19.1@aar")
}

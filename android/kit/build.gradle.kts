plugins { kotlin("jvm") }

kotlin {
    jvmToolchain(17)
    explicitApi()
}

// Its checks run by Maven, against the library of a desktop.
sourceSets.test { kotlin.setSrcDirs(emptyList<String>()) }

dependencies {
    api(project(":core"))
    api("org.jetbrains.kotlinx:kotlinx-coroutines-core:1.11.0")
}

// For a machine with Android's SDK. `cargo task android` builds the library and the bindings first, then runs this.
// Everywhere else Maven builds and tests the same sources: see pom.xml.
pluginManagement {
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
}

dependencyResolutionManagement {
    repositoriesMode = RepositoriesMode.FAIL_ON_PROJECT_REPOS
    repositories {
        google()
        mavenCentral()
    }
}

rootProject.name = "holdfast"

include(":core", ":kit", ":ui", ":app")

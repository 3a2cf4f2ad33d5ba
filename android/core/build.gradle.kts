// The generated bindings alone.
plugins { kotlin("jvm") }

kotlin {
    jvmToolchain(17)
    sourceSets.main { kotlin.setSrcDirs(listOf("../../target/bindings/kotlin")) }
}

dependencies {
    // The app brings the archive that holds JNA's own libraries for phones; here its classes are enough.
    compileOnly("net.java.dev.jna:jna:5.19.1")
}

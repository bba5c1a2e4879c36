// SPDX-License-Identifier: Apache-2.0
package rodtravel;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Loads the native library: the file that the property rodtravel.library names, or the one in the jar. */
final class Library {
    /** Words of Java for a machine, and those of the build. */
    private static final Map<String, String> MACHINES =
            Map.of("amd64", "x86_64", "x86", "x86", "i386", "x86", "arm64", "aarch64");

    private Library() {}

    static void load() {
        String given = System.getProperty("rodtravel.library");
        if (given != null)
            System.load(Path.of(given).toAbsolutePath().toString());
        else
            loadFromJar("native/" + system() + "-" + machine() + "/" + System.mapLibraryName("rodtravel_java"));
    }

    private static String system() {
        String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        return name.startsWith("windows") ? "windows" : name.startsWith("mac") ? "darwin" : name;
    }

    private static String machine() {
        String name = System.getProperty("os.arch");
        return MACHINES.getOrDefault(name, name);
    }

    private static void loadFromJar(String name) {
        try (InputStream in = Library.class.getResourceAsStream(name)) {
            if (in == null)
                throw new UnsatisfiedLinkError("the jar has no " + name + "; name a file by -Drodtravel.library=FILE");
            load(in);
        } catch (IOException error) {
            throw (Error) new UnsatisfiedLinkError("the library cannot be copied out of the jar; name a file by "
                    + "-Drodtravel.library=FILE, or another directory by -Djava.io.tmpdir").initCause(error);
        }
    }

    /** The file is needed only until it is loaded; a system that keeps it open deletes it in the end. */
    private static void load(InputStream in) throws IOException {
        Path file = Files.createTempFile("rodtravel", ".library");
        try {
            try (OutputStream out = Files.newOutputStream(file)) {
                in.transferTo(out);
            }
            System.load(file.toString());
        } finally {
            if (!file.toFile().delete())
                file.toFile().deleteOnExit();
        }
    }
}

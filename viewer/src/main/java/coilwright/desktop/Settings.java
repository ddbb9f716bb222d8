package coilwright.desktop;

import coilwright.file.SafeFiles;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;

/**
 * What the window remembers from one day to the next: recent files, light or dark, size of letters. Kept in
 * {@code coilwright/window.properties} where the system keeps settings, or in the folder that the system property
 * {@code coilwright.settings} names. Where they cannot be written, nothing is remembered.
 */
final class Settings {
    private static final int MOST_RECENT = 8;

    private final Path folder;
    private final Properties values = new Properties();

    Settings(Path folder) {
        this.folder = folder;
        try {
            values.load(new StringReader(Files.readString(file())));
        } catch (IOException | IllegalArgumentException e) {
            // The first time there are none; damaged ones are as good as none.
            values.clear();
        }
    }

    static Settings usual() {
        String given = System.getProperty("coilwright.settings", "");
        if (!given.isEmpty()) {
            return new Settings(Path.of(given));
        }
        String appData = System.getenv("APPDATA");
        String config = System.getenv("XDG_CONFIG_HOME");
        Path base = appData != null && !appData.isBlank()
                ? Path.of(appData)
                : config != null && !config.isBlank()
                        ? Path.of(config)
                        : Path.of(System.getProperty("user.home"), ".config");
        return new Settings(base.resolve("coilwright"));
    }

    private Path file() {
        return folder.resolve("window.properties");
    }

    /** Where changes of a job are kept that has no file yet. */
    Path untitled() {
        return folder.resolve("untitled.yaml.autosave");
    }

    boolean dark() {
        return Boolean.parseBoolean(values.getProperty("dark", "false"));
    }

    void dark(boolean dark) {
        set("dark", Boolean.toString(dark));
    }

    /** Size of letters and all else, percent. */
    int size() {
        try {
            return Math.max(100, Math.min(250, Integer.parseInt(values.getProperty("size", "100"))));
        } catch (NumberFormatException e) {
            return 100;
        }
    }

    void size(int percent) {
        set("size", Integer.toString(percent));
    }

    List<Path> recent() {
        List<Path> out = new ArrayList<>();
        for (int i = 1; i <= MOST_RECENT; i++) {
            String name = values.getProperty("recent." + i, "");
            try {
                if (!name.isEmpty()) {
                    out.add(Path.of(name));
                }
            } catch (InvalidPathException e) {
                // A damaged name is as good as none.
            }
        }
        return out;
    }

    void opened(Path path) {
        List<Path> all = new ArrayList<>(recent());
        all.remove(path.toAbsolutePath());
        all.add(0, path.toAbsolutePath());
        for (int i = 1; i <= MOST_RECENT; i++) {
            if (i <= all.size()) {
                values.setProperty("recent." + i, all.get(i - 1).toString());
            }
        }
        write();
    }

    private void set(String key, String value) {
        values.setProperty(key, value);
        write();
    }

    private void write() {
        try {
            Files.createDirectories(folder);
            var text = new StringWriter();
            values.store(text, null);
            SafeFiles.write(file(), text.toString());
        } catch (IOException e) {
            // Nothing is lost that the user made.
            return;
        }
    }
}

package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;

/** A folder with a whole set of files that reads without a fault, to be changed by a test. */
public final class GrowersFolder {
  private final Path folder;

  public GrowersFolder(Path folder) {
    this.folder = folder;
    for (String name : List.of("scenario.yaml", "crops.yaml", "sowings.csv")) {
      write(name, resource(name));
    }
    write("weather.csv", weather(LocalDate.of(1996, 1, 1), LocalDate.of(2001, 8, 31)));
  }

  private static String resource(String name) {
    try (InputStream in = GrowersFolder.class.getResourceAsStream("/propcap/files/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A record with a cold winter and a warm summer, the same each year. */
  public static String weather(LocalDate from, LocalDate to) {
    StringBuilder rows = new StringBuilder("date,tmin,tmax\n");
    for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(1)) {
      long minC = Math.round(8 - 12 * Math.cos(2 * Math.PI * (day.getDayOfYear() - 15) / 365));
      rows.append(day).append(',').append(minC).append(".5,").append(minC + 9).append('\n');
    }
    return rows.toString();
  }

  public Path path(String name) {
    return folder.resolve(name);
  }

  public String text(String name) {
    try {
      return Files.readString(path(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public void write(String name, String text) {
    write(name, text.getBytes(StandardCharsets.UTF_8));
  }

  public void write(String name, byte[] bytes) {
    try {
      Files.write(path(name), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Changes a piece of a file that stands there once. A ^ in the new text is left out; it marks the
   * place where a fault is expected.
   *
   * @return that place as {@code file:line:column}, or {@code file:line} for CSV
   */
  public String change(String name, String old, String now) {
    String text = text(name);
    assertThat(text.split(Pattern.quote(old), -1)).as("'%s' once", old).hasSize(2);
    return writeMarked(name, text.replace(old, now));
  }

  /** Writes a file, with the same mark. */
  String writeMarked(String name, String marked) {
    write(name, marked.replace("^", ""));
    String before = marked.substring(0, Math.max(0, marked.indexOf('^')));
    long line = 1 + before.chars().filter(c -> c == '\n').count();
    int column = before.length() - before.lastIndexOf('\n');
    return name + ":" + line + (name.endsWith(".csv") ? "" : ":" + column);
  }

  /** What is unlikely in a scenario that has no fault. */
  List<Fault> warnings() throws FaultsException {
    ScenarioReader.Reading reading =
        ScenarioReader.read(path("scenario.yaml"), UnsavedTexts.none());
    var unused = reading.sound();
    return reading.warnings();
  }

  public Scenario read(String name) throws FaultsException {
    return ScenarioReader.read(path(name));
  }

  public Scenario read() throws FaultsException {
    return read("scenario.yaml");
  }

  /** All faults, with files named relative to the folder. */
  List<String> faults(String name) {
    FaultsException e = catchThrowableOfType(FaultsException.class, () -> read(name));
    assertThat(e).as("faults of %s", name).isNotNull();
    String prefix = folder + folder.getFileSystem().getSeparator();
    return e.faults().stream().map(f -> f.toString().replace(prefix, "")).toList();
  }

  List<String> faults() {
    return faults("scenario.yaml");
  }
}

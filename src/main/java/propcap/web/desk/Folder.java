package propcap.web.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import propcap.disk.FileSet;
import propcap.disk.WholeFile;
import propcap.files.text.OnDisk;
import propcap.files.weather.WeatherFile;
import propcap.results.AnswerKind;
import propcap.results.ResultsFolder;
import propcap.web.request.RefusedException;

/** The scenario's folder: the page writes nothing outside of it. */
public final class Folder {
  private static final Pattern NAME =
      Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._&+'(),!#%@=-]{0,80}");
  private static final int MOST_LISTED = 200;

  private final Path root;
  private final OnDisk disk = new OnDisk();

  Folder(Path root) throws IOException {
    this.root = root.toRealPath();
    if (FileSet.isUnfinished(root)) {
      // A saving that was cut short is finished, so that nothing looks changed by others.
      files().close();
    }
  }

  private FileSet files() throws IOException {
    return FileSet.open(root, "the page of " + root);
  }

  public OnDisk disk() {
    return disk;
  }

  public Path root() {
    return root;
  }

  /** A file of the folder by its bare name; links that lead out of it are refused. */
  public Path file(String name, String ending) throws RefusedException {
    if (!NAME.matcher(name).matches() || !name.toLowerCase(Locale.ROOT).endsWith(ending)) {
      throw RefusedException.bad(
          "'" + name + "' is no name for a file; a name such as spring-2" + ending);
    }
    return inside(root.resolve(name));
  }

  /** A file as it is given, once it is sure that it lies in the folder. */
  public Path inside(Path file) throws RefusedException {
    Path plain = file.toAbsolutePath().normalize();
    try {
      if (plain.startsWith(root)
          && (Files.exists(plain)
              ? plain.toRealPath().startsWith(root)
              : !Files.isSymbolicLink(plain))) {
        return plain;
      }
    } catch (IOException e) {
      // Refused below, as anything whose place is not known.
    }
    throw RefusedException.bad(name(plain) + " lies outside the scenario's folder");
  }

  /** A file's name as the folder knows it. */
  public String name(Path file) {
    return root.relativize(file.toAbsolutePath().normalize()).toString().replace('\\', '/');
  }

  /** The folder for an answer about a scenario, as the commands name it. */
  public ResultsFolder open(Path scenario, AnswerKind answer) throws IOException, RefusedException {
    return ResultsFolder.open(
        results(scenario, answer),
        answer,
        new ResultsFolder.Asker(scenario, "the page of " + name(scenario), false));
  }

  /** Where an answer about a scenario is saved. */
  public Path results(Path scenario, AnswerKind answer) throws RefusedException {
    Path results = inside(root.resolve("results"));
    return inside(results.resolve(stem(scenario) + answer.ending()));
  }

  static String stem(Path file) {
    return String.valueOf(file.getFileName()).replaceFirst("\\.ya?ml$", "");
  }

  /** The folder's scenarios, by name. */
  public List<String> scenarios() throws IOException {
    List<String> scenarios = new ArrayList<>();
    for (String name : named(".yaml", ".yml")) {
      String text = disk.shown(root.resolve(name));
      if (text.startsWith("extends:")
          || text.contains("\nextends:")
          || text.contains("\nplaces:")) {
        scenarios.add(name);
      }
    }
    return scenarios;
  }

  /** The folder's tables, whatever they hold. */
  public List<String> tables() throws IOException {
    return named(".csv");
  }

  /** The tables that read as weather records. */
  public List<String> records() throws IOException {
    List<String> records = new ArrayList<>();
    for (String name : tables()) {
      if (WeatherFile.isRecord(disk.shown(root.resolve(name)))) {
        records.add(name);
      }
    }
    return records;
  }

  /** When each scenario, list and table was last changed. */
  Map<String, Long> times() throws IOException {
    Map<String, Long> times = new LinkedHashMap<>();
    for (String name : named(".yaml", ".yml", ".csv")) {
      times.put(name, Files.getLastModifiedTime(root.resolve(name)).toMillis());
    }
    return times;
  }

  private List<String> named(String... endings) throws IOException {
    try (Stream<Path> files = Files.list(root)) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> f.getFileName().toString())
          .filter(n -> !n.startsWith(".") && Stream.of(endings).anyMatch(n::endsWith))
          .sorted()
          .limit(MOST_LISTED)
          .toList();
    }
  }

  /**
   * What a saving came to, by the folder's names.
   *
   * @param kept copies of what was there before
   */
  public record Saved(List<String> written, List<String> kept) {}

  /**
   * Writes files, all of them or none. Where a link leads to another file, that one is written.
   * What was there before is kept beside it, unless the page wrote it: then a step back has it.
   *
   * @param texts by file
   * @param own what the page wrote last, by file
   */
  Saved write(Map<Path, String> texts, Map<Path, String> own) throws IOException {
    Map<Path, String> real = new LinkedHashMap<>();
    List<String> kept = new ArrayList<>();
    try (FileSet files = files()) {
      for (Map.Entry<Path, String> text : texts.entrySet()) {
        Path file = text.getKey();
        if (Files.exists(file) && !disk.shown(file).equals(own.get(file))) {
          kept.add(name(WholeFile.keep(file)));
        }
        real.put(Files.exists(file) ? file.toRealPath() : file, text.getValue());
      }
      files.write(real, List.of());
    }
    return new Saved(
        texts.keySet().stream().map(this::name).sorted().toList(), kept.stream().sorted().toList());
  }
}

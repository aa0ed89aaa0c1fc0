package propcap.files.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import propcap.farm.Crop;
import propcap.files.text.Fault;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.SourceText;
import propcap.files.text.YamlFile;

/**
 * A crop list apart from any scenario, with where its numbers come from: the list that Propcap
 * brings, or a grower's own.
 */
public final class CropBook {
  private static final String LIST = "crop-list.yaml";

  private final Map<String, Entry> byName;

  private CropBook(Map<String, Entry> byName) {
    this.byName = byName;
  }

  /**
   * A crop as it stands in the list.
   *
   * @param kind flower, vegetable, herb; empty where the list does not say
   * @param also other everyday names that the list gives it
   * @param values what stands under its keys, such as {@code emergence.at}
   * @param text its lines as written, with their comments
   * @param sources those that its comments name, in that order
   */
  public record Entry(
      Crop crop,
      String kind,
      List<String> also,
      Map<String, String> values,
      List<String> text,
      List<Source> sources) {
    public Entry {
      also = List.copyOf(also);
      values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
      text = List.copyOf(text);
      sources = List.copyOf(sources);
    }

    /** Whether it is called so, in small letters or not, with spaces or hyphens. */
    boolean isCalled(String name) {
      return Stream.concat(Stream.of(crop.name()), also.stream())
          .anyMatch(each -> plain(each).equals(plain(name)));
    }

    private static String plain(String name) {
      return name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "-");
    }
  }

  /** A source by its short tag. */
  public record Source(String tag, String reference) {}

  /** The list that Propcap brings. */
  public static CropBook ofPropcap() {
    try (InputStream in = CropBook.class.getResourceAsStream("/propcap/files/" + LIST)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its crop list");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      Faults faults = new Faults();
      CropBook book = read(new SourceText(Path.of(LIST), text), faults);
      if (faults.any()) {
        throw new IllegalStateException("the program's own crop list: " + faults.sorted().get(0));
      }
      return book;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads a crop list.
   *
   * @param doubted told of each thing that is unlikely and stops nothing
   * @throws FaultsException with all its faults, if there is any
   */
  public static CropBook read(Path file, Consumer<Fault> doubted) throws FaultsException {
    Faults faults = new Faults();
    Optional<CropBook> book =
        SourceText.read(file, FilePosition.whole(file), faults).map(source -> read(source, faults));
    faults.check(doubted);
    return book.orElseThrow();
  }

  public static CropBook read(SourceText source, Faults faults) {
    Map<String, Entry> byName = new LinkedHashMap<>();
    CropNotes notes = new CropNotes(source.text());
    Map<String, Node.Entry> list =
        YamlFile.read(source, faults)
            .flatMap(root -> CropList.listed(source.file(), root, faults))
            .map(Node.Keyed::entries)
            .orElse(Map.of());
    list.forEach(
        (name, written) -> {
          Optional<CropFields> fields = CropList.fields(name, written, faults);
          Optional<Crop> crop = fields.flatMap(f -> f.read(UnaryOperator.identity()));
          if (fields.isPresent() && crop.isPresent()) {
            Map<String, String> values = WrittenScenario.texts(fields.get().fields().known());
            byName.put(name, entry(crop.get(), values, written.spot().line(), notes));
          }
        });
    return new CropBook(byName);
  }

  private static Entry entry(Crop crop, Map<String, String> values, int line, CropNotes notes) {
    List<String> text = notes.entry(line);
    List<Source> sources =
        CropNotes.tags(text).stream()
            .filter(notes.references()::containsKey)
            .map(tag -> new Source(tag, notes.references().getOrDefault(tag, "")))
            .toList();
    return new Entry(crop, notes.kind(line), CropNotes.also(text), values, text, sources);
  }

  /** All entries, in the list's order. */
  public List<Entry> entries() {
    return List.copyOf(byName.values());
  }

  /** The crops by name, in the list's order; the places that they name are not looked for. */
  public Map<String, Crop> crops() {
    Map<String, Crop> crops = new LinkedHashMap<>();
    byName.forEach((name, entry) -> crops.put(name, entry.crop()));
    return crops;
  }

  /** The entry of a crop, if the list has it under this name or as another name of one. */
  public Optional<Entry> named(String name) {
    return Optional.ofNullable(byName.get(name))
        .or(() -> byName.values().stream().filter(entry -> entry.isCalled(name)).findFirst());
  }

  /** What to ask for in place of a name that the list lacks, such as "did you mean zinnia?". */
  public String nearest(String name) {
    return FaultWords.oneOf(name, byName.keySet()).words();
  }
}

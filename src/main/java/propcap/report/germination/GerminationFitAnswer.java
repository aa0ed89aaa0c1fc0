package propcap.report.germination;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.GerminationFit;
import propcap.farm.Crop;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;

/**
 * What a germination test says for the crop list.
 *
 * @param entries of the lots, in their order
 * @param counts what the counts are called
 */
public record GerminationFitAnswer(GerminationFit fit, List<CropEntry> entries, String counts)
    implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "germination-fit",
          "-germination",
          "germination-fit.json",
          "counts version lots",
          "germination-fit.html germination-fit.csv");

  public GerminationFitAnswer {
    entries = List.copyOf(entries);
  }

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    for (int i = 0; i < entries.size(); i++) {
      GerminationWords words = new GerminationWords(fit.lots().get(i), entries.get(i));
      lines.add(words.verdict()).add(words.base());
    }
    for (int i = 0; i < entries.size(); i++) {
      GerminationWords words = new GerminationWords(fit.lots().get(i), entries.get(i));
      lines.add(words.name() + ": " + words.trays());
      words.remarks().forEach(lines::add);
    }
    return lines.endingWith(
        counts
            + ": "
            + Words.plural(fit.lots().size(), "lot")
            + ", "
            + Words.plural(fit.lots().stream().mapToInt(GerminationFit.Lot::seeds).sum(), "seed"));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("germination-fit.html", page(version).html());
    files.put(kind().file(), GerminationFitTables.json(fit, entries, counts, version));
    files.put("germination-fit.csv", GerminationFitTables.csv(fit));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return GerminationFitPage.of(fit, entries, counts, version);
  }

  /** A lot's entry as a crop list has it, with the rest of the crop's where that is known. */
  public static List<String> block(CropEntry entry, @Nullable Crop known) {
    return new CropEntryText(entry).block(known);
  }

  /** What a lot's test tells, by key of the crop list, then by key within it. */
  public static Map<String, Map<String, String>> values(CropEntry entry) {
    return new CropEntryText(entry).values();
  }
}

package propcap.report.size;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.size.FurnishingList;
import propcap.study.size.Sizing;

/**
 * How large a place must be, and what to order for it: that stands below the ten headlines, a line
 * for each thing.
 */
public record SizingAnswer(Sizing sizing, FurnishingList order) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "size",
          "-size",
          "size.json",
          "scenario goal candidates",
          "size.html size.csv size-order.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines().add(SizeVerdict.of(sizing));
    SizeNotes.of(sizing).all().forEach(lines::add);
    Headlines headlines =
        lines.endingWith(
            "%s: %s of all sizes together, seed %s"
                .formatted(
                    sizing.scenario().name(),
                    Words.plural((double) sizing.seasonsRun(), "spring"),
                    sizing.settings().seed()));
    return new Headlines(
        Stream.concat(headlines.told().stream(), orders(order).stream()).toList(),
        headlines.basis());
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("size.html", page(version).html());
    files.put(kind().file(), SizeFiles.json(sizing, order, version));
    files.put("size.csv", SizeFiles.candidates(sizing).csv(sizing.candidates()));
    files.put("size-order.csv", SizeFiles.ORDER.csv(order.lines()));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return SizePage.of(sizing, order, version);
  }

  /** What to order, below the name of its place. */
  private static List<String> orders(FurnishingList order) {
    List<String> lines = new ArrayList<>();
    String place = "";
    for (FurnishingList.Line line : order.lines()) {
      if (!line.place().equals(place)) {
        place = line.place();
        lines.add("Order for " + place + ":");
      }
      lines.add("  " + line.what() + ": " + line.shown());
    }
    return lines.stream().map(l -> Words.shortened(l, Lines.COLUMNS)).toList();
  }
}

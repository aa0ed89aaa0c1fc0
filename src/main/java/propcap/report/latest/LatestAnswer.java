package propcap.report.latest;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.FilledWords;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.latest.Latest;

/**
 * Until when to sow.
 *
 * @param filled sowings that were filled in before it was asked
 */
public record LatestAnswer(Latest latest, List<Filled> filled) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "latest",
          "-latest",
          "latest.json",
          "scenario tooLate sowings",
          "latest.html latest.csv latest-days.csv");

  /** So many are told one by one. */
  private static final int FEW = 2;

  public LatestAnswer {
    filled = List.copyOf(filled);
  }

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    List<LatestRow> rows = LatestRow.of(latest, filled);
    if (rows.size() <= FEW) {
      rows.forEach(r -> lines.add(String.join(" ", LatestWords.of(r))));
    } else {
      LatestWords.together(rows).forEach(lines::add);
    }
    LatestWords.begun(latest).ifPresent(lines::add);
    FilledWords.sentences(filled, latest.scenario().season()).forEach(lines::add);
    return lines.endingWith(
        latest.scenario().name()
            + ": up to"
            + Fact.run(latest.settings().seasons(), " of each day", latest.settings().seed())
                .substring(1));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("latest.html", page(version).html());
    files.put(kind().file(), LatestFiles.json(latest, filled, version));
    files.put("latest.csv", LatestFiles.csv(latest, filled));
    files.put("latest-days.csv", LatestFiles.days(latest, filled));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return LatestPage.of(latest, filled, version);
  }
}

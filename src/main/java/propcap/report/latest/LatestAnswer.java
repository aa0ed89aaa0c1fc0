package propcap.report.latest;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.report.kit.Fact;
import propcap.report.kit.FilledWords;
import propcap.report.kit.Lines;
import propcap.results.Answer;
import propcap.results.KnownResults;
import propcap.study.FirstPlan.Filled;
import propcap.study.Latest;

/**
 * Until when to sow.
 *
 * @param filled sowings that were filled in before it was asked
 */
public record LatestAnswer(Latest latest, List<Filled> filled) implements Answer {
  /** So many are told one by one. */
  private static final int FEW = 2;

  public LatestAnswer {
    filled = List.copyOf(filled);
  }

  @Override
  public KnownResults kind() {
    return KnownResults.LATEST;
  }

  @Override
  public List<String> headlines() {
    Lines lines = new Lines();
    List<LatestRow> rows = LatestRow.of(latest, filled);
    if (rows.size() <= FEW) {
      rows.forEach(r -> lines.add(String.join(" ", LatestWords.of(r))));
    } else {
      LatestWords.together(rows).forEach(lines::add);
    }
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
    files.put("latest.html", LatestPage.of(latest, filled, version).html());
    files.put(kind().file(), LatestFiles.json(latest, filled, version));
    files.put("latest.csv", LatestFiles.csv(latest, filled));
    files.put("latest-days.csv", LatestFiles.days(latest, filled));
    return files;
  }

  @Override
  public String html() {
    return LatestPage.of(latest, filled, "").partsHtml();
  }
}

package propcap.report.sweep;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Lines;
import propcap.report.kit.Money;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.sweep.Sweep;

/** What comes of many scenarios. */
public record SweepAnswer(Sweep sweep) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "sweep", "-sweep", "sweep.json", "scenario best scenarios", "sweep.html sweep.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    SweepWords words = new SweepWords(sweep);
    Lines lines = new Lines();
    words.verdicts().forEach(lines::add);
    words.leaders().forEach(lines::add);
    return lines.endingWith(
        Words.plural(sweep.scenarios().size(), "scenario")
            + Fact.run(sweep.settings().seasons(), " of each", sweep.settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("sweep.html", page(version).html());
    files.put(kind().file(), json(version));
    files.put("sweep.csv", SweptRow.table(sweep).csv(SweptRow.all(sweep)));
    return files;
  }

  private record Members(
      double confidence,
      Optional<String> currency,
      String judgedBy,
      String best,
      List<String> notTold,
      List<String> verdicts,
      List<?> scenarios) {}

  private String json(String version) {
    SweepWords words = new SweepWords(sweep);
    return Json.text(
        Head.of(
            sweep.first().variant().scenario(),
            version,
            sweep.settings().seasons(),
            sweep.settings()),
        new Members(
            sweep.confidence(),
            Money.currency(sweep.first().variant().scenario()),
            sweep.byMargin() ? "margin" : "on-time",
            sweep.best().variant().name(),
            words.notTold(),
            words.verdicts(),
            SweptRow.table(sweep).objects(SweptRow.all(sweep))));
  }

  @Override
  public AnswerPage page(String version) {
    return new SweepPage(sweep).page(version);
  }
}

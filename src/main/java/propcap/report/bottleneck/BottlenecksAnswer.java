package propcap.report.bottleneck;

import java.util.LinkedHashMap;
import java.util.Map;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.bottleneck.Bottlenecks;

/** What a little more or less of each place brings. */
public record BottlenecksAnswer(Bottlenecks bottlenecks) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "bottleneck",
          "-bottleneck",
          "bottleneck.json",
          "scenario worths steps",
          "bottleneck.html bottleneck.csv bottleneck-steps.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    BottlenecksWords words = new BottlenecksWords(bottlenecks);
    StairWords stair = new StairWords(bottlenecks);
    // Where money is asked, whether it pays is the question.
    Lines lines =
        stair.isOfMoney()
            ? new Lines().add(stair.plan()).add(words.verdict())
            : new Lines().add(words.verdict()).add(stair.plan());
    words.findings().forEach(lines::add);
    return lines.endingWith(
        bottlenecks.scenario().name()
            + Fact.run(bottlenecks.seasons(), " of each trial", bottlenecks.settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("bottleneck.html", page(version).html());
    BottlenecksTables tables = new BottlenecksTables(bottlenecks);
    files.put(kind().file(), tables.json(version));
    files.put("bottleneck.csv", tables.worths().csv(bottlenecks.worths()));
    files.put("bottleneck-steps.csv", tables.steps().csv(bottlenecks.steps()));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return BottlenecksPage.of(bottlenecks, version);
  }
}

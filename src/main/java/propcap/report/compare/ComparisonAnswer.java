package propcap.report.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.InvestmentWords;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Sheet;
import propcap.report.kit.Templates;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.compare.Comparison;

/** What alternatives would change. */
public record ComparisonAnswer(Comparison comparison) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "comparison",
          "-compare",
          "comparison.json",
          "scenarios confidence outcomes",
          "comparison.html comparison.csv comparison-money.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    List<ComparisonWords> alternatives = ComparisonWords.of(comparison);
    boolean isShort = alternatives.size() > 1;
    // Where money is asked, whether it pays is the question.
    InvestmentWords.of(comparison)
        .forEach(i -> lines.add(isShort ? i.shortVerdict() : i.verdict()));
    alternatives.forEach(w -> lines.add(isShort ? w.shortVerdict() : w.verdict()));
    lines.add(ComparisonWords.safe(comparison));
    return lines.endingWith(
        comparison.scenarios().get(0).name()
            + " against "
            + Words.plural(alternatives.size(), "alternative")
            + Fact.run(comparison.seasons(), "", comparison.settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("comparison.html", page(version).html());
    files.put(kind().file(), ComparisonTables.json(comparison, version));
    files.put("comparison.csv", ComparisonTables.csv(comparison));
    files.put(
        "comparison-money.csv",
        ComparisonTables.investments("").csv(InvestmentWords.of(comparison)));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return ComparisonPage.of(comparison, version);
  }

  /** Scenarios side by side in a small table, the first and what differs from it. */
  public String sideBySide() {
    Sheet sheet = new SideBySide(comparison).sheet();
    return Templates.withoutLooseErrors(Templates.fill("sheet.jte", sheet));
  }

  /** Whether each alternative pays, where money is asked, and what changed in its outcome. */
  public List<String> verdicts() {
    return Stream.concat(
            InvestmentWords.of(comparison).stream().map(InvestmentWords::shortVerdict),
            ComparisonWords.of(comparison).stream().map(ComparisonWords::verdict))
        .toList();
  }
}

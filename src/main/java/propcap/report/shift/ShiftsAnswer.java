package propcap.report.shift;

import java.util.LinkedHashMap;
import java.util.Map;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.shift.Shifts;

/** What comes of sowing earlier or later. */
public record ShiftsAnswer(Shifts shifts) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "shift", "-shift", "shift.json", "scenario confidence groups", "shift.html shift.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    ShiftWords.of(shifts).forEach(w -> lines.add(w.verdict()));
    return lines.endingWith(
        shifts.scenario().name()
            + Fact.run(shifts.seasons(), " of each shift", shifts.settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("shift.html", page(version).html());
    files.put(kind().file(), ShiftFiles.json(shifts, version));
    files.put("shift.csv", ShiftFiles.csv(shifts));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return ShiftPage.of(shifts, version);
  }
}

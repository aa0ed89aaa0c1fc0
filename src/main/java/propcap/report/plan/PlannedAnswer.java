package propcap.report.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.FilledWords;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.plan.Planned;

/**
 * A better plan: the sowing plan itself, and what changes and why.
 *
 * @param filled sowings that were filled in first: what changes is told against the plan so filled
 */
public record PlannedAnswer(Planned planned, List<Filled> filled) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "plan",
          "-plan",
          "plan.json",
          "scenario gain changes",
          "plan.html sowings.csv plan-changes.csv");

  public PlannedAnswer {
    filled = List.copyOf(filled);
  }

  /** Of a plan that was written to the last cell. */
  public PlannedAnswer(Planned planned) {
    this(planned, List.of());
  }

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    PlanWords words = PlanWords.of(planned);
    Lines lines = new Lines();
    FilledWords.sentences(filled, planned.start().season()).forEach(lines::add);
    words.givenUp().ifPresent(lines::add);
    lines.add(words.verdict()).add(words.goals());
    List<PlanMissed.Missed> missed = new PlanMissed(planned).all();
    if (!missed.isEmpty()) {
      lines.add("Below its goal is " + missed.get(0).told() + (missed.size() == 1 ? "." : ";"));
    }
    if (missed.size() > 1) {
      lines.add(
          "  so are "
              + Words.list(missed.stream().skip(1).map(PlanMissed.Missed::sowing).toList())
              + ".");
    }
    words.bound().ifPresent(lines::add);
    words.foremost().forEach(lines::add);
    return lines.endingWith(
        "%s: %s tried on %s springs, seed %s%s"
            .formatted(
                planned.start().name(),
                Words.plural((double) planned.search().tries(), "plan"),
                planned.search().springs(),
                planned.settings().seed(),
                planned.search().isStopped() ? "; stopped by hand" : ""));
  }

  @Override
  public Map<String, String> files(String version) {
    PlanTables tables = new PlanTables(planned);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("plan.html", page(version).html());
    files.put("sowings.csv", tables.sowingPlan());
    files.put(kind().file(), tables.json(version));
    files.put("plan-changes.csv", tables.chances().csv(tables.sowings()));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return PlanPage.of(planned, filled, version);
  }
}

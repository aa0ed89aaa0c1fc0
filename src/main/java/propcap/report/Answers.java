package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.study.Bottlenecks;
import propcap.study.Comparison;
import propcap.study.OrderList;
import propcap.study.Planned;
import propcap.study.RunSettings;
import propcap.study.Shifts;
import propcap.study.Sizing;

/**
 * The answers to what to do: a page, a file for other programs and tables for a spreadsheet, all of
 * them in a {@link ResultsFolder} or none; and the few lines that a terminal shows, the verdict
 * first.
 *
 * <p>Each {@code write} gives the files written, the page first, and refuses with an {@link
 * IllegalArgumentException} an answer that holds a number that is not finite.
 */
public final class Answers {
  private Answers() {}

  /** Writes what the alternatives would change. */
  public static List<Path> write(Comparison comparison, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("comparison.html", ComparisonPage.of(comparison, version).html());
    files.put(KnownResults.COMPARISON.file(), ComparisonFiles.json(comparison, version));
    files.put("comparison.csv", ComparisonFiles.csv(comparison));
    files.put("comparison-money.csv", ComparisonFiles.moneyCsv(comparison));
    return folder.write(files);
  }

  /** Writes what a little more or less of each place brings. */
  public static List<Path> write(Bottlenecks bottlenecks, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("bottleneck.html", BottlenecksPage.of(bottlenecks, version).html());
    files.put(KnownResults.BOTTLENECK.file(), BottlenecksFiles.json(bottlenecks, version));
    files.put("bottleneck.csv", BottlenecksFiles.csv(bottlenecks));
    files.put("bottleneck-steps.csv", BottlenecksFiles.stepsCsv(bottlenecks));
    return folder.write(files);
  }

  /** Writes how large a place must be, and what to order for it. */
  public static List<Path> write(
      Sizing sizing, OrderList order, String version, ResultsFolder folder) throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("size.html", SizePage.of(sizing, order, version).html());
    files.put(KnownResults.SIZE.file(), SizeFiles.json(sizing, order, version));
    files.put("size.csv", SizeFiles.csv(sizing));
    files.put("size-order.csv", SizeFiles.orderCsv(order));
    return folder.write(files);
  }

  /** Writes what comes of sowing earlier or later. */
  public static List<Path> write(Shifts shifts, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("shift.html", ShiftPage.of(shifts, version).html());
    files.put(KnownResults.SHIFT.file(), ShiftFiles.json(shifts, version));
    files.put("shift.csv", ShiftFiles.csv(shifts));
    return folder.write(files);
  }

  /** Writes a better plan: the sowing plan itself, and what changes and why. */
  public static List<Path> write(Planned planned, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("plan.html", PlanPage.of(planned, version).html());
    files.put("sowings.csv", PlanFiles.sowings(planned));
    files.put(KnownResults.PLAN.file(), PlanFiles.json(planned, version));
    files.put("plan-changes.csv", PlanFiles.changes(planned));
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Planned planned) {
    PlanWords words = PlanWords.of(planned);
    Lines lines = new Lines();
    words.givenUp().ifPresent(lines::add);
    lines.add(words.verdict()).add(words.goals());
    List<String> missed = new PlanMissed(planned).all();
    if (!missed.isEmpty()) {
      lines.add("Below its goal is " + missed.get(0) + (missed.size() == 1 ? "." : ";"));
      if (missed.size() > 1) {
        lines.add(
            "  so are "
                + Words.list(
                    planned.missed().stream()
                        .skip(1)
                        .map(s -> planned.kept().sowings().get(s).sowing().id())
                        .toList())
                + ".");
      }
    }
    words.bound().ifPresent(lines::add);
    words.foremost().forEach(lines::add);
    return lines.endingWith(
        planned.start().name()
            + ": "
            + Words.plural((double) planned.search().tries(), "plan")
            + " tried on "
            + planned.search().springs()
            + " springs, seed "
            + planned.settings().seed()
            + (planned.search().isStopped() ? "; stopped by hand" : ""));
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Comparison comparison) {
    Lines lines = new Lines();
    List<ComparisonWords> alternatives = ComparisonWords.of(comparison);
    boolean isShort = alternatives.size() > 1;
    alternatives.forEach(w -> lines.add(isShort ? w.shortVerdict() : w.verdict()));
    for (ComparisonWords words : alternatives) {
      InvestmentWords.of(comparison, words.alternative())
          .ifPresent(i -> lines.add(isShort ? i.shortVerdict() : i.verdict()));
    }
    return lines.endingWith(
        comparison.scenarios().get(0).name()
            + " against "
            + Words.plural(alternatives.size(), "alternative")
            + run(comparison.seasons(), "", comparison.settings()));
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Bottlenecks bottlenecks) {
    BottlenecksWords words = new BottlenecksWords(bottlenecks);
    Lines lines = new Lines().add(words.verdict()).add(new StairWords(bottlenecks).plan());
    words.findings().forEach(lines::add);
    return lines.endingWith(
        bottlenecks.scenario().name()
            + run(bottlenecks.seasons(), " of each trial", bottlenecks.settings()));
  }

  /**
   * At most ten lines of plain text and what to order, a line for each thing; none wider than 100
   * columns.
   */
  public static List<String> headlines(Sizing sizing, OrderList order) {
    Lines lines = new Lines().add(SizeVerdict.of(sizing));
    SizeNotes.of(sizing).all().forEach(lines::add);
    List<String> all =
        new ArrayList<>(
            lines.endingWith(
                sizing.scenario().name()
                    + ": "
                    + Words.plural((double) sizing.seasonsRun(), "spring")
                    + " of all sizes together, seed "
                    + sizing.settings().seed()));
    all.addAll(orders(order));
    return List.copyOf(all);
  }

  /** What to order, below the name of its place. */
  private static List<String> orders(OrderList order) {
    List<String> lines = new ArrayList<>();
    String place = "";
    for (OrderList.Line line : order.lines()) {
      if (!line.place().equals(place)) {
        place = line.place();
        lines.add("Order for " + place + ":");
      }
      lines.add("  " + line.what() + ": " + line.shown());
    }
    return lines.stream().map(l -> Words.shortened(l, Headlines.COLUMNS)).toList();
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Shifts shifts) {
    Lines lines = new Lines();
    ShiftWords.of(shifts).forEach(w -> lines.add(w.verdict()));
    return lines.endingWith(
        shifts.scenario().name() + run(shifts.seasons(), " of each shift", shifts.settings()));
  }

  private static String run(int seasons, String of, RunSettings settings) {
    return ": " + Words.plural(seasons, "spring") + of + ", seed " + settings.seed();
  }
}

package propcap.report.frost;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.weather.DayEstimate;
import propcap.evidence.weather.FrostDates;
import propcap.evidence.weather.FrostDates.FrostDate;
import propcap.evidence.weather.FrostTable;
import propcap.evidence.weather.FrostTable.Release;
import propcap.evidence.weather.LastFrostFit;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** Frost dates as tables; in files days are month and day, 05-09. */
final class FrostTables {
  private final FrostTable table;
  private final FrostWords words;
  private final Table<DayEstimate> day;
  private final Table<FrostDate> date;
  private final Table<Release> release;

  FrostTables(FrostTable table) {
    this.table = table;
    this.words = new FrostWords(table);
    this.day =
        new Table<DayEstimate>()
            .csv("", e -> words.monthDay(e.day()))
            .json("day", e -> words.monthDay(e.day()))
            .file("low", e -> words.monthDay(e.low()))
            .file("high", e -> words.monthDay(e.high()));
    this.date =
        new Table<FrostDate>()
            .file("chance", FrostDate::chance)
            .file("counted", day, FrostDate::counted)
            .file("fitted", day, FrostDate::fittedOrNull);
    this.release =
        new Table<Release>("Crop", Release::crop)
            .file("crop", Release::crop)
            .file("frost-risk", Release::frostRisk)
            .number("Frost risk", "", r -> Words.percent(r.frostRisk()))
            .file("offset-days", Release::offsetDays)
            .number("Offset", "days", r -> Words.signed(r.offsetDays()))
            .csv("release", r -> words.monthDay(r.date().day()))
            .csv("low", r -> words.monthDay(r.date().low()))
            .csv("high", r -> words.monthDay(r.date().high()))
            .json("date", r -> day.object(r.date()))
            .cell("Release", "95 % limits", r -> cell(r.date()));
  }

  private record Read(
      String record,
      String crops,
      String version,
      @Nullable String seasonStart,
      @Nullable String seasonEnd,
      List<Integer> years) {}

  private record Frosts(List<Threshold> thresholds, double frostAtC, List<?> releases) {}

  private record Threshold(
      double atC, int yearsWithFrost, int yearsToTheEnd, @Nullable Fit fit, List<?> dates) {}

  private record Fit(@Nullable String mean, double sdDays, double misfit, boolean isDoubtful) {}

  String json(String record, String cropList, String version) {
    return Json.text(
        new Read(
            record,
            cropList,
            version,
            words.monthDay(0),
            words.monthDay(table.season().days() - 1),
            table.years()),
        new Frosts(
            table.thresholds().stream().map(this::threshold).toList(),
            table.frostAtC(),
            release.objects(table.releases())));
  }

  private Threshold threshold(FrostDates frosts) {
    return new Threshold(
        frosts.record().frostAtC(),
        frosts.record().lastFrosts().length,
        frosts.yearsToTheEnd(),
        frosts.fit().map(this::fit).orElse(null),
        date.objects(frosts.dates()));
  }

  private Fit fit(LastFrostFit fit) {
    return new Fit(
        words.monthDay((int) Math.round(fit.meanDay())),
        fit.sdDays(),
        fit.misfit(),
        fit.isDoubtful());
  }

  /** A row for each threshold and chance. */
  String datesCsv() {
    record Row(FrostDates frosts, FrostDate date) {}
    return new Table<Row>()
        .csv("threshold-c", r -> r.frosts.record().frostAtC())
        .csv("", date, Row::date)
        .csv(
            table.thresholds().stream()
                .flatMap(t -> t.dates().stream().map(d -> new Row(t, d)))
                .toList());
  }

  /** A row for each day of the season. */
  String dailyCsv() {
    Table<Integer> csv = new Table<Integer>().csv("day", words::monthDay);
    for (FrostDates frosts : table.thresholds()) {
      String at = Csv.number(frosts.record().frostAtC()) + "-c";
      csv.csv("counted-at-" + at, frosts::countedChanceFrom)
          .csv("fitted-at-" + at, d -> frosts.fittedChanceFrom(d).orElse(null));
    }
    return csv.csv(IntStream.range(0, table.season().days()).boxed().toList());
  }

  /** A row for each crop. */
  String releasesCsv() {
    return release.csv(table.releases());
  }

  Sheet releases() {
    return release.sheet(
        "Release dates.", "With the 95 % limits of a record of so many years.", table.releases());
  }

  Cell cell(@Nullable DayEstimate estimate) {
    return estimate == null
        ? Cell.NONE
        : Cell.of(words.day(estimate.day()), words.limits(estimate));
  }
}

package propcap.report.frost;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.evidence.DayEstimate;
import propcap.evidence.FrostDates;
import propcap.evidence.FrostDates.FrostDate;
import propcap.evidence.FrostTable;
import propcap.evidence.FrostTable.Release;
import propcap.evidence.LastFrostFit;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;

/** Frost dates for other programs and for a spreadsheet; days are month and day, 05-09. */
final class FrostFiles {
  private final FrostTable table;
  private final FrostWords words;

  FrostFiles(FrostTable table) {
    this.table = table;
    this.words = new FrostWords(table);
  }

  String json(String record, String cropList, String version) {
    return new PutJson()
        .put("record", record)
        .put("crops", cropList)
        .put("version", version)
        .put("seasonStart", words.monthDay(0))
        .put("seasonEnd", words.monthDay(table.season().days() - 1))
        .put("years", PutJson.wholes(table.years()))
        .put("thresholds", PutJson.each(table.thresholds(), this::threshold))
        .put("frostAtC", table.frostAtC())
        .put("releases", PutJson.each(table.releases(), this::release))
        .text();
  }

  private PutJson threshold(FrostDates frosts) {
    return new PutJson()
        .put("atC", frosts.record().frostAtC())
        .put("yearsWithFrost", frosts.record().lastFrosts().length)
        .put("yearsToTheEnd", frosts.yearsToTheEnd())
        .put("fit", frosts.fit().map(this::fit).orElse(null))
        .put("dates", PutJson.each(frosts.dates(), this::date));
  }

  private PutJson fit(LastFrostFit fit) {
    return new PutJson()
        .put("mean", words.monthDay((int) Math.round(fit.meanDay())))
        .put("sdDays", fit.sdDays())
        .put("misfit", fit.misfit())
        .put("isDoubtful", fit.isDoubtful());
  }

  private PutJson date(FrostDate date) {
    return new PutJson()
        .put("chance", date.chance())
        .put("counted", estimate(date.counted()))
        .put("fitted", date.fitted().map(this::estimate).orElse(null));
  }

  private PutJson estimate(DayEstimate estimate) {
    return new PutJson()
        .put("day", words.monthDay(estimate.day()))
        .put("low", words.monthDay(estimate.low()))
        .put("high", words.monthDay(estimate.high()));
  }

  private PutJson release(Release release) {
    return new PutJson()
        .put("crop", release.crop())
        .put("frostRisk", release.frostRisk())
        .put("offsetDays", release.offsetDays())
        .put("date", estimate(release.date()));
  }

  /** A row for each threshold and chance. */
  String datesCsv() {
    RowCsv csv = new RowCsv();
    csv.row(
        List.of("threshold-c", "chance", "counted", "counted-low", "counted-high"),
        List.of("fitted", "fitted-low", "fitted-high"));
    for (FrostDates frosts : table.thresholds()) {
      for (FrostDate date : frosts.dates()) {
        csv.row(
            RowCsv.numbers(frosts.record().frostAtC(), date.chance()),
            days(date.counted()),
            date.fitted().map(this::days).orElse(List.of("", "", "")));
      }
    }
    return csv.text();
  }

  /** A row for each day of the season. */
  String dailyCsv() {
    RowCsv csv = new RowCsv();
    List<String> header = new ArrayList<>(List.of("day"));
    for (FrostDates frosts : table.thresholds()) {
      String at = RowCsv.number(frosts.record().frostAtC());
      header.addAll(List.of("counted-at-" + at + "-c", "fitted-at-" + at + "-c"));
    }
    csv.row(header);
    for (int day = 0; day < table.season().days(); day++) {
      List<String> row = new ArrayList<>(List.of(text(day)));
      for (FrostDates frosts : table.thresholds()) {
        row.add(RowCsv.number(frosts.countedChanceFrom(day)));
        row.add(frosts.fittedChanceFrom(day).map(RowCsv::number).orElse(""));
      }
      csv.row(row);
    }
    return csv.text();
  }

  /** A row for each crop. */
  String releasesCsv() {
    RowCsv csv = new RowCsv();
    csv.row(List.of("crop", "frost-risk", "offset-days", "release", "low", "high"));
    for (Release release : table.releases()) {
      csv.row(
          List.of(release.crop(), RowCsv.number(release.frostRisk())),
          RowCsv.wholes(release.offsetDays()),
          days(release.date()));
    }
    return csv.text();
  }

  private List<String> days(DayEstimate estimate) {
    return List.of(text(estimate.day()), text(estimate.low()), text(estimate.high()));
  }

  private String text(@Nullable Integer day) {
    String written = words.monthDay(day);
    return written == null ? "" : written;
  }
}

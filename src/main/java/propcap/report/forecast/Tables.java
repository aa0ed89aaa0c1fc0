package propcap.report.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Loss;
import propcap.farm.Sowing;
import propcap.farm.Step;
import propcap.farm.Work;
import propcap.report.kit.Plan;
import propcap.report.kit.RowCsv;
import propcap.study.Forecast;
import propcap.study.Forecast.DayUse;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SeasonRow;
import propcap.study.Forecast.SowingForecast;
import propcap.study.HandsForecast;
import propcap.study.Stat;

/** The forecast as tables for a spreadsheet: plants, spaces and days. */
final class Tables {
  private Tables() {}

  /** A row for each sowing of the plan. */
  static String sowings(Forecast forecast) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("id", "crop", "lot", "sow", "trays", "plants-needed", "bed-from", "bed-by"),
        RowCsv.statNames("cells-sown"),
        RowCsv.statNames("on-time"),
        RowCsv.statNames("late"),
        List.of("chance-met", "chance-met-low", "chance-met-high"),
        List.of("first-out", "median-out", "last-out", "ready-by"),
        waitNames());
    for (SowingForecast row : forecast.sowings()) {
      Sowing sowing = row.sowing();
      table.row(
          List.of(sowing.id(), sowing.crop(), sowing.lot(), RowCsv.date(sowing.sow())),
          List.of(RowCsv.whole(sowing.trays()), RowCsv.whole(sowing.plantsNeeded())),
          List.of(RowCsv.date(sowing.bedFrom()), RowCsv.date(sowing.bedBy())),
          RowCsv.stat(row.cellsSown()),
          RowCsv.stat(row.onTime()),
          RowCsv.stat(row.late()),
          RowCsv.numbers(row.chanceMet(), row.chanceMetLow(), row.chanceMetHigh()),
          List.of(
              RowCsv.date(row.firstOut()),
              RowCsv.date(row.medianOut()),
              RowCsv.date(row.lastOut())),
          List.of(RowCsv.date(row.readyBy())),
          Stream.of(Step.values())
              .map(s -> RowCsv.number(row.waiting().getOrDefault(s, 0.0)))
              .toList());
    }
    return table.text();
  }

  /** A row for each place and day of the season. */
  static String places(Forecast forecast) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("place", "kind", "spaces", "date", "mean", "p10", "p50", "p90"),
        List.of("chance-full", "demand"));
    LocalDate start = forecast.scenario().season().start();
    for (Occupancy place : forecast.places()) {
      for (int day = 0; day < place.days().size(); day++) {
        DayUse use = place.days().get(day);
        table.row(
            List.of(place.name(), place.kind().word(), RowCsv.whole(place.spaces())),
            List.of(RowCsv.date(start.plusDays(day))),
            RowCsv.numbers(
                use.mean(), use.p10(), use.p50(), use.p90(), use.chanceFull(), use.demand()));
      }
    }
    return table.text();
  }

  /** A row for each crop and cause of loss; the share is that of the crop's cells sown. */
  static String losses(Forecast forecast) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("crop", "cause", "mean", "se", "low", "high", "unlike", "p10", "p50", "p90"),
        List.of("share-of-cells-sown"));
    for (String crop : Plan.crops(forecast)) {
      double sown = Plan.cellsSown(forecast, crop);
      for (Loss loss : Loss.values()) {
        Stat stat = Plan.present(Plan.present(forecast.lossesByCrop(), crop), loss);
        table.row(
            List.of(crop, loss.word()),
            RowCsv.stat(stat),
            List.of(RowCsv.number(sown == 0 ? 0 : stat.mean() / sown)));
      }
    }
    return table.text();
  }

  /** A row for each day of the season, in hours; no budget where hours are not limited. */
  static String hands(Forecast forecast) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("date", "budget", "hours", "p10", "p50", "p90", "chance-short"),
        Stream.of(Work.values()).map(w -> "hours-" + w.word()).toList());
    for (HandsForecast.Day day : forecast.hands().days()) {
      table.row(
          List.of(RowCsv.date(day.date())),
          List.of(Double.isFinite(day.budget()) ? RowCsv.number(day.budget()) : ""),
          RowCsv.numbers(day.mean(), day.p10(), day.p50(), day.p90(), day.chanceShort()),
          Stream.of(Work.values()).map(w -> RowCsv.number(Plan.present(day.byWork(), w))).toList());
    }
    return table.text();
  }

  /** A row for each season. */
  static String seasons(Forecast forecast) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("season", "weather-year", "cells-sown", "on-time", "late", "sowings-met"),
        Stream.of(Loss.values()).map(Loss::word).toList(),
        waitNames());
    for (SeasonRow row : forecast.rows()) {
      table.row(
          RowCsv.wholes(row.season(), row.weatherYear(), row.cellsSown(), row.onTime(), row.late()),
          RowCsv.wholes(row.sowingsMet()),
          Stream.of(Loss.values())
              .map(l -> RowCsv.whole(row.losses().getOrDefault(l, 0L)))
              .toList(),
          Stream.of(Step.values())
              .map(w -> RowCsv.whole(row.waiting().getOrDefault(w, 0L)))
              .toList());
    }
    return table.text();
  }

  private static List<String> waitNames() {
    return Stream.of(Step.values()).map(s -> "wait-" + s.word()).toList();
  }
}

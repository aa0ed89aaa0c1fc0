package propcap.report.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.WorkKind;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.Table;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.Forecast.SeasonRow;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.HandsForecast;
import propcap.study.statistics.Stat;

/** The forecast as tables for a spreadsheet: plants, spaces and days. */
final class Tables {
  /** A row for each sowing of the plan. */
  static final Table<SowingForecast> SOWINGS =
      new Table<SowingForecast>()
          .file("id", s -> s.sowing().id())
          .file("crop", s -> s.sowing().crop())
          .csv("lot", s -> s.sowing().lot())
          .csv("sow", s -> s.sowing().sow())
          .file("trays", s -> s.sowing().trays())
          .csv("plants-needed", s -> s.sowing().plantsNeeded())
          .json("needed", s -> s.sowing().plantsNeeded())
          .csv("bed-from", s -> s.sowing().bedFrom())
          .csv("bed-by", s -> s.sowing().bedBy())
          .csv("cells-sown", Table.STAT, SowingForecast::cellsSown)
          .stat("on-time", SowingForecast::onTime)
          .stat("late", SowingForecast::late)
          .file("chance-met", SowingForecast::chanceMet)
          .file("chance-met-low", SowingForecast::chanceMetLow)
          .file("chance-met-high", SowingForecast::chanceMetHigh)
          .file("first-out", SowingForecast::firstOut)
          .file("median-out", SowingForecast::medianOut)
          .file("last-out", SowingForecast::lastOut)
          .csv("ready-by", SowingForecast::readyBy)
          .csv(RoomWait.values(), Tables::wait, (s, step) -> s.waiting().getOrDefault(step, 0.0));

  private Tables() {}

  private static String wait(RoomWait step) {
    return "wait-" + step.word();
  }

  /** A row for each place and day of the season. */
  static String places(Forecast forecast) {
    record Row(Occupancy place, LocalDate date, DayUse use) {}
    LocalDate start = forecast.scenario().season().start();
    return new Table<Row>()
        .csv("place", r -> r.place.name())
        .csv("kind", r -> r.place.kind())
        .csv("spaces", r -> r.place.spaces())
        .csv("date", Row::date)
        .csv("mean", r -> r.use.mean())
        .csv("p10", r -> r.use.p10())
        .csv("p50", r -> r.use.p50())
        .csv("p90", r -> r.use.p90())
        .csv("chance-full", r -> r.use.chanceFull())
        .csv("demand", r -> r.use.demand())
        .csv(
            forecast.places().stream()
                .flatMap(
                    p ->
                        IntStream.range(0, p.days().size())
                            .mapToObj(d -> new Row(p, start.plusDays(d), p.days().get(d))))
                .toList());
  }

  /** A row for each crop and cause of loss; the share is that of the crop's cells sown. */
  static String losses(Forecast forecast) {
    record Row(String crop, double sown, Loss cause, Stat lost) {}
    List<Row> rows = new ArrayList<>();
    for (String crop : ForecastLookup.crops(forecast)) {
      double sown = ForecastLookup.cellsSown(forecast, crop);
      ForecastLookup.inOrder(Loss.values(), ForecastLookup.present(forecast.lossesByCrop(), crop))
          .forEach((cause, lost) -> rows.add(new Row(crop, sown, cause, lost)));
    }
    return new Table<Row>()
        .csv("crop", Row::crop)
        .csv("cause", Row::cause)
        .csv("mean", r -> r.lost.mean())
        .csv("", Table.STAT_LIMITS, Row::lost)
        .csv("share-of-cells-sown", r -> r.sown == 0 ? 0 : r.lost.mean() / r.sown)
        .csv(rows);
  }

  /** A row for each day of the season, in hours; no budget where hours are not limited. */
  static String hands(Forecast forecast) {
    return new Table<HandsForecast.Day>()
        .csv("date", HandsForecast.Day::date)
        .csv("budget", d -> Double.isFinite(d.budget()) ? d.budget() : null)
        .csv("hours", HandsForecast.Day::mean)
        .csv("p10", HandsForecast.Day::p10)
        .csv("p50", HandsForecast.Day::p50)
        .csv("p90", HandsForecast.Day::p90)
        .csv("chance-short", HandsForecast.Day::chanceShort)
        .csv(
            WorkKind.values(),
            w -> "hours-" + w.word(),
            (d, w) -> ForecastLookup.present(d.byWork(), w))
        .csv(forecast.hands().days());
  }

  /** A row for each season. */
  static String seasons(Forecast forecast) {
    return new Table<SeasonRow>()
        .csv("season", SeasonRow::season)
        .csv("weather-year", SeasonRow::weatherYear)
        .csv("cells-sown", SeasonRow::cellsSown)
        .csv("on-time", SeasonRow::onTime)
        .csv("late", SeasonRow::late)
        .csv("sowings-met", SeasonRow::sowingsMet)
        .csv(Loss.values(), Loss::word, (r, loss) -> r.losses().getOrDefault(loss, 0L))
        .csv(RoomWait.values(), Tables::wait, (r, step) -> r.waiting().getOrDefault(step, 0L))
        .csv(forecast.rows());
  }
}

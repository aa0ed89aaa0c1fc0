package propcap.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.Sowing;
import propcap.farm.Step;
import propcap.study.Forecast;
import propcap.study.Forecast.DayUse;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SeasonRow;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Stat;

/** The forecast as CSV for a spreadsheet: plants, spaces and days to four decimals. */
final class Tables {
  private static final int DECIMALS = 4;

  private final List<List<String>> rows = new ArrayList<>();

  private Tables() {}

  /** A row for each sowing of the plan. */
  static String sowings(Forecast forecast) {
    Tables table = new Tables();
    table.row(
        List.of("id", "crop", "lot", "sow", "trays", "plants-needed", "bed-from", "bed-by"),
        statNames("cells-sown"),
        statNames("on-time"),
        statNames("late"),
        List.of("chance-met", "chance-met-low", "chance-met-high"),
        List.of("first-out", "median-out", "last-out", "ready-by"),
        waitNames());
    for (SowingForecast row : forecast.sowings()) {
      Sowing sowing = row.sowing();
      table.row(
          List.of(sowing.id(), sowing.crop(), sowing.lot(), date(sowing.sow())),
          List.of(whole(sowing.trays()), whole(sowing.plantsNeeded())),
          List.of(date(sowing.bedFrom()), date(sowing.bedBy())),
          stat(row.cellsSown()),
          stat(row.onTime()),
          stat(row.late()),
          numbers(row.chanceMet(), row.chanceMetLow(), row.chanceMetHigh()),
          List.of(date(row.firstOut()), date(row.medianOut()), date(row.lastOut())),
          List.of(date(row.readyBy())),
          Stream.of(Step.values()).map(s -> number(row.waiting().getOrDefault(s, 0.0))).toList());
    }
    return table.text();
  }

  /** A row for each place and day of the season. */
  static String places(Forecast forecast) {
    Tables table = new Tables();
    table.row(
        List.of("place", "kind", "spaces", "date", "mean", "p10", "p50", "p90"),
        List.of("chance-full", "demand"));
    LocalDate start = forecast.scenario().season().start();
    for (Occupancy place : forecast.places()) {
      for (int day = 0; day < place.days().size(); day++) {
        DayUse use = place.days().get(day);
        table.row(
            List.of(place.name(), place.kind().word(), whole(place.spaces())),
            List.of(date(start.plusDays(day))),
            numbers(use.mean(), use.p10(), use.p50(), use.p90(), use.chanceFull(), use.demand()));
      }
    }
    return table.text();
  }

  /** A row for each crop and cause of loss; the share is that of the crop's cells sown. */
  static String losses(Forecast forecast) {
    Tables table = new Tables();
    table.row(List.of("crop", "cause", "mean", "se", "p10", "p50", "p90", "share-of-cells-sown"));
    for (String crop : Plan.crops(forecast)) {
      double sown = Plan.cellsSown(forecast, crop);
      for (Loss loss : Loss.values()) {
        Stat stat = Plan.present(Plan.present(forecast.lossesByCrop(), crop), loss);
        table.row(
            List.of(crop, loss.word()),
            stat(stat),
            List.of(number(sown == 0 ? 0 : stat.mean() / sown)));
      }
    }
    return table.text();
  }

  /** A row for each season. */
  static String seasons(Forecast forecast) {
    Tables table = new Tables();
    table.row(
        List.of("season", "weather-year", "cells-sown", "on-time", "late", "sowings-met"),
        Stream.of(Loss.values()).map(Loss::word).toList(),
        waitNames());
    for (SeasonRow row : forecast.rows()) {
      table.row(
          wholes(row.season(), row.weatherYear(), row.cellsSown(), row.onTime(), row.late()),
          wholes(row.sowingsMet()),
          Stream.of(Loss.values()).map(l -> whole(row.losses().getOrDefault(l, 0L))).toList(),
          Stream.of(Step.values()).map(w -> whole(row.waiting().getOrDefault(w, 0L))).toList());
    }
    return table.text();
  }

  private static List<String> statNames(String name) {
    return List.of(name, name + "-se", name + "-p10", name + "-p50", name + "-p90");
  }

  private static List<String> waitNames() {
    return Stream.of(Step.values()).map(s -> "wait-" + s.word()).toList();
  }

  private static List<String> stat(Stat stat) {
    return numbers(stat.mean(), stat.se(), stat.p10(), stat.p50(), stat.p90());
  }

  private static List<String> numbers(double... numbers) {
    List<String> texts = new ArrayList<>();
    for (double number : numbers) {
      texts.add(number(number));
    }
    return texts;
  }

  private static List<String> wholes(long... numbers) {
    return LongStream.of(numbers).mapToObj(Tables::whole).toList();
  }

  private static String whole(long number) {
    return Long.toString(number);
  }

  private static String number(double number) {
    return BigDecimal.valueOf(Words.finite(number))
        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String date(@Nullable LocalDate date) {
    return date == null ? "" : date.toString();
  }

  @SafeVarargs
  private void row(List<String>... parts) {
    List<String> row = new ArrayList<>();
    for (List<String> part : parts) {
      row.addAll(part);
    }
    rows.add(row);
  }

  private String text() {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      rows.forEach(csv::writeRecord);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }
}

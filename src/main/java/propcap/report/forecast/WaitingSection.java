package propcap.report.forecast;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.RoomWait;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.kit.Dates;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.statistics.Stat;

/** What waits for what, and which place holds up the others. */
public record WaitingSection(
    String verdict, List<String> sentences, List<String> months, List<Row> rows, String svg) {
  private static final int SHADES = 5;

  private static final String NONE = "–";

  /** A queue in text; how often it was seen only where that is seldom. */
  public record Row(String name, List<Cell> cells, String total, String seen) {}

  /** Tray-days in a month, and how dark they are shaded, 0 to 5. */
  public record Cell(String text, int shade) {
    /** Whether nothing waits then. */
    public boolean isNone() {
      return text.equals(NONE);
    }
  }

  static WaitingSection of(Forecast forecast) {
    WaitingCauses bottleneck = WaitingCauses.of(forecast);
    List<WaitingLine> queues = WaitingLine.of(forecast);
    Season season = forecast.scenario().season();
    var months = Dates.monthsOf(season);
    return new WaitingSection(
        bottleneck.verdict(forecast),
        sentences(forecast, bottleneck),
        months.stream().map(m -> Dates.month(m, season)).toList(),
        rows(queues),
        queues.isEmpty()
            ? ""
            : WaitingChart.of(WaitingLine.atMost(ChartStyle.STACK.size(), queues), season));
  }

  private static List<Row> rows(List<WaitingLine> queues) {
    double most =
        queues.stream()
            .flatMap(q -> q.byMonth().stream())
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    return queues.stream()
        .map(
            q ->
                new Row(
                    q.name(),
                    q.byMonth().stream().map(v -> cell(v, most)).toList(),
                    Words.amount(q.total()),
                    q.seen()))
        .toList();
  }

  private static Cell cell(double trayDays, double most) {
    return trayDays == 0
        ? new Cell(NONE, 0)
        : new Cell(Words.amount(trayDays), (int) Math.ceil(SHADES * trayDays / most));
  }

  private static List<String> sentences(Forecast forecast, WaitingCauses bottleneck) {
    List<String> sentences = new ArrayList<>();
    if (bottleneck.toBeSown() >= WaitingCauses.NOTHING) {
      sentences.add(sowing(forecast, bottleneck));
    }
    if (bottleneck.forTables() >= WaitingCauses.NOTHING) {
      sentences.add(tables(forecast, bottleneck));
    }
    if (bottleneck.toHarden() >= WaitingCauses.NOTHING) {
      Stat harden = ForecastLookup.present(forecast.waiting(), RoomWait.HARDEN);
      sentences.add(
          trayDays(harden)
              + " wait for room to harden off, each space that the plants need counted.");
    }
    return sentences;
  }

  private static String sowing(Forecast forecast, WaitingCauses bottleneck) {
    String waiting =
        trayDays(ForecastLookup.present(forecast.waiting(), RoomWait.SOW)) + " wait to be sown; ";
    if (bottleneck.sowBehindOverdue() < WaitingCauses.NOTHING) {
      return waiting
          + "no tray that should have left stood in the way: it is the heat itself that is too"
          + " small.";
    }
    return waiting
        + "for "
        + Words.count(bottleneck.sowBehindOverdue())
        + " of them a tray that should have left stood in the way, because the tables were full: "
        + (bottleneck.tablesHoldUpHeat()
            ? "it is the tables that hold up the heat."
            : "for the rest, the larger part, the heat itself is too small.");
  }

  private static String tables(Forecast forecast, WaitingCauses bottleneck) {
    Stat leave = ForecastLookup.present(forecast.waiting(), RoomWait.LEAVE);
    Stat pot = ForecastLookup.present(forecast.waiting(), RoomWait.POT);
    String waiting =
        Words.count(bottleneck.forTables())
            + " tray-days a spring wait for a table, "
            + Words.count(leave.mean())
            + " of them to leave the heat and "
            + Words.count(pot.mean())
            + " to be potted on; ";
    if (bottleneck.tablesBehindReady() < WaitingCauses.NOTHING) {
      return waiting
          + "no plants that were ready to harden off stood there: it is the tables themselves that"
          + " are too small.";
    }
    return "%sfor %s of them plants that were ready to harden off stood on the tables: %s"
        .formatted(waiting, Words.count(bottleneck.tablesBehindReady()), wayOut(bottleneck));
  }

  private static String wayOut(WaitingCauses bottleneck) {
    if (!bottleneck.readyPlantsHoldUpTables()) {
      return "for the rest, the larger part, the tables themselves are too small.";
    }
    return bottleneck.hardeningIsShort()
        ? "it is the hardening area that holds up the tables."
        : "the hardening area had room, so it is the date of release that holds up the tables.";
  }

  private static String trayDays(Stat stat) {
    return Words.count(stat.mean()) + " tray-days a spring (" + Words.usual(stat) + ")";
  }
}

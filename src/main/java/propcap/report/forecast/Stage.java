package propcap.report.forecast;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import propcap.farm.Season;
import propcap.farm.TrayMove;
import propcap.report.chart.ChartStyle;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecast.Span;

/** Where a sowing's trays stand, in the order of their life. */
enum Stage {
  /** Due to be sown, and waiting for room. */
  UNSOWN("waiting to be sown", Color.WHITE),
  HEAT("in the heat", ChartStyle.ORANGE),
  TABLE("on the table", ChartStyle.BLUE),
  POTS("in pots", ChartStyle.SKY_BLUE),
  HARDENING("hardening off", ChartStyle.YELLOW);

  /** A wait shorter than this, days, is not drawn: it is the hours up to the morning's round. */
  private static final double SHORT_WAIT_DAYS = 0.5;

  private final String words;
  private final Color colour;

  Stage(String words, Color colour) {
    this.words = words;
    this.colour = colour;
  }

  String words() {
    return words;
  }

  /** The same in every picture. */
  Color colour() {
    return colour;
  }

  /** The same as the pages write it, such as {@code #e69f00}. */
  String hex() {
    return String.format(Locale.ROOT, "#%06x", colour.getRGB() & 0xffffff);
  }

  /** A stay in one stage, mean over trays and seasons, in day numbers of the season. */
  record Stay(Stage stage, double from, double to) {}

  /**
   * The stays of a sowing one after the other. Where fewer than half of the trays that leave the
   * heat are potted on, the pots are not shown: the means of the few would stand for all.
   */
  static List<Stay> staysOf(Season season, SowingForecast sowing) {
    Span sown = sowing.milestones().get(TrayMove.SOWN);
    if (sown == null) {
      return List.of();
    }
    List<Stay> stays = new ArrayList<>();
    double due = season.dayOf(sowing.sowing().sow());
    if (sown.mean() - due > 1 + SHORT_WAIT_DAYS) {
      stays.add(new Stay(UNSOWN, due, sown.mean()));
    }
    Stage stage = HEAT;
    double from = sown.mean();
    for (TrayMove move : TrayMove.values()) {
      Span span = sowing.milestones().get(move);
      if (move == TrayMove.SOWN || span == null || isRarelyPotted(sowing, move)) {
        continue;
      }
      // Means over different trays may cross by a little; a stay is never negative.
      double to = Math.max(from, span.mean());
      stays.add(new Stay(stage, from, to));
      from = to;
      stage = after(move);
    }
    return stays;
  }

  private static boolean isRarelyPotted(SowingForecast sowing, TrayMove move) {
    Span potted = sowing.milestones().get(TrayMove.POTTED_ON);
    Span offHeat = sowing.milestones().get(TrayMove.OFF_HEAT);
    return move == TrayMove.POTTED_ON
        && potted != null
        && offHeat != null
        && potted.trays() < offHeat.trays() / 2;
  }

  private static Stage after(TrayMove move) {
    return switch (move) {
      case SOWN -> HEAT;
      case OFF_HEAT -> TABLE;
      case POTTED_ON -> POTS;
      case MOVED_OUT, PLANTED_OUT -> HARDENING;
    };
  }

  /** Mean day of planting out; empty where nothing is planted out. */
  static Optional<Double> plantedOut(SowingForecast sowing) {
    return Optional.ofNullable(sowing.milestones().get(TrayMove.PLANTED_OUT)).map(Span::mean);
  }
}

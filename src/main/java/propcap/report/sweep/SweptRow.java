package propcap.report.sweep;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.statistics.Difference;
import propcap.study.sweep.Sweep;
import propcap.study.sweep.Sweep.Swept;

/** A scenario of a sweep, as a row of its table. */
record SweptRow(Sweep sweep, int number) {
  /** More columns of settings than these leave no room on a page; the files have all of them. */
  private static final int MOST_SETTINGS = 2;

  /** In the order asked for. */
  static List<SweptRow> all(Sweep sweep) {
    return IntStream.range(0, sweep.scenarios().size())
        .mapToObj(i -> new SweptRow(sweep, i))
        .toList();
  }

  /** The best first. */
  static List<SweptRow> bestFirst(Sweep sweep) {
    return sweep.ranking().stream().map(i -> new SweptRow(sweep, i)).toList();
  }

  Swept swept() {
    return sweep.scenarios().get(number);
  }

  private String setting(int column) {
    return swept().variant().settings().get(column).written();
  }

  private Map<String, String> settings() {
    Map<String, String> settings = new LinkedHashMap<>();
    for (int c = 0; c < sweep.columns().size(); c++) {
      settings.put(sweep.columns().get(c), setting(c));
    }
    return settings;
  }

  /** How it stands to the best; nothing where it has clearly less. */
  private String standing() {
    return number == sweep.ranking().get(0)
        ? "best"
        : sweep.notTold().contains(number) ? "not told from the best" : "";
  }

  private String below() {
    String standing = standing();
    return number > 0 ? standing : standing.isEmpty() ? "the first" : "the first; " + standing;
  }

  private String fullest() {
    return swept().fullest().isEmpty() ? "none" : swept().fullest();
  }

  private int trays() {
    return swept().variant().scenario().trays();
  }

  private int sowings() {
    return swept().variant().scenario().sowings().size();
  }

  static Table<SweptRow> table(Sweep sweep) {
    Table<SweptRow> table =
        new Table<SweptRow>("Scenario", r -> r.swept().variant().name(), SweptRow::below)
            .file("scenario", r -> r.swept().variant().name());
    for (int c = 0; c < sweep.columns().size(); c++) {
      int column = c;
      table.csv(sweep.columns().get(c), r -> r.setting(column));
      if (sweep.columns().size() <= MOST_SETTINGS) {
        table.words(Words.capital(sweep.columns().get(c)), r -> r.setting(column));
      }
    }
    String currency = currency(sweep);
    return table
        .when(!sweep.columns().isEmpty(), t -> t.json("settings", SweptRow::settings))
        .file("standing", SweptRow::standing)
        .file("trays", SweptRow::trays)
        .number("Trays", "", r -> Words.count(r.trays()))
        .stat("on-time", r -> r.swept().onTime())
        .cell("On time", "plants", r -> Cell.level(r.swept().onTime()))
        .difference("to-first", r -> r.swept().toFirst())
        .cell("On time", "against the first", r -> difference(r.swept().toFirst(), false))
        .stat("late", r -> r.swept().late())
        .cell("Late", "plants", r -> Cell.level(r.swept().late()))
        .file("sowings", SweptRow::sowings)
        .file("safe", r -> r.swept().safe())
        .number("Safe", "sowings", r -> r.swept().safe() + " of " + r.sowings())
        .stat("met", r -> r.swept().met())
        .cell("Met", "sowings a spring", r -> Cell.level(r.swept().met()))
        .file("fullest", r -> r.swept().fullest())
        .file("full-days", r -> r.swept().fullDays())
        .cell("Fullest", "days full", r -> Cell.of(Words.amount(r.swept().fullDays()), r.fullest()))
        .stat("margin", r -> r.swept().margin())
        .difference("margin-to-first", r -> r.swept().marginToFirst())
        .when(
            !currency.isEmpty(),
            t ->
                t.cell("Margin", currency, r -> Cell.money(r.swept().margin()))
                    .cell(
                        "Margin",
                        "against the first",
                        r -> difference(r.swept().marginToFirst(), true)));
  }

  private static Cell difference(@Nullable Difference difference, boolean isMoney) {
    return difference == null ? Cell.NONE : isMoney ? Cell.money(difference) : Cell.of(difference);
  }

  /** That of the first that has money; empty where none has. */
  static String currency(Sweep sweep) {
    return sweep.scenarios().stream()
        .flatMap(s -> Money.currency(s.variant().scenario()).stream())
        .findFirst()
        .orElse("");
  }
}

package propcap.report.kit;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.study.fill.FirstPlan.Filled;

/** What was filled in of a sowing plan, in words. */
public final class FilledWords {
  private static final int NAMED = 3;

  private FilledWords() {}

  /** What was filled in, and what cannot be in time; nothing where all was written. */
  public static List<String> sentences(List<Filled> filled, Season season) {
    List<String> sentences = new ArrayList<>();
    if (filled.isEmpty()) {
      return sentences;
    }
    List<String> named = new ArrayList<>();
    filled.stream().limit(NAMED).forEach(f -> named.add(told(f, season)));
    if (filled.size() > NAMED) {
      named.add(Words.count(filled.size() - NAMED) + " more");
    }
    sentences.add("Filled in where the sowing plan is empty: " + Words.list(named) + ".");
    List<String> lacking =
        filled.stream().filter(f -> f.chance() < f.goal()).map(f -> f.sowing().id()).toList();
    if (!lacking.isEmpty()) {
      sentences.add(
          "Even by %s, with endless room, no day tried brings %s to %s"
              .formatted(
                  lacking.size() == 1 ? "itself" : "themselves",
                  Words.list(lacking),
                  lacking.size() == 1 ? "its goal." : "their goals."));
    }
    return sentences;
  }

  private static String told(Filled filled, Season season) {
    Sowing sowing = filled.sowing();
    String trays = Words.plural(sowing.trays(), "tray");
    String day = Dates.day(sowing.sow(), season);
    return sowing.id()
        + " ("
        + (filled.isDateFilled() && filled.areTraysFilled()
            ? trays + " on " + day
            : filled.isDateFilled() ? "sown on " + day : trays)
        + ")";
  }

  /** All that was filled in. */
  public static Sheet sheet(List<Filled> filled, Season season) {
    return new Table<Filled>("Sowing", f -> f.sowing().id())
        .number("Sow", "", f -> Dates.shortDay(f.sowing().sow(), season))
        .number("Trays", "", f -> Words.count(f.sowing().trays()))
        .number("On time", "chance by itself", f -> Words.chance(f.chance()))
        .sheet(
            "What was filled in.",
            "The fewest trays that reach the goal with endless room, and a day a week before the last"
                + " on which they do.",
            filled);
  }
}

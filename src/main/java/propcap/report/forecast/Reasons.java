package propcap.report.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;
import propcap.study.forecast.Shortfall;

/**
 * Why each sowing that is not safe lacks plants: an account in plants that adds up to what it
 * lacks, the largest part first.
 */
public record Reasons(List<Row> rows, String springs, String note) {
  private static final String LACK_OF_ROOM = "lack of room";
  private static final String TOO_FEW_TRAYS = "too few trays";

  /** So many accounts are folded on a phone. */
  private static final int MANY = 6;

  /** A part smaller than this, plants of a mean spring, goes to the others. */
  private static final double WORTH_A_WORD = 0.5;

  /** From this share of what is lacking on, one part is most of it. */
  private static final double MOST = 0.5;

  /** Waiting of less than this, days a tray, is not told. */
  private static final double A_WAIT = 0.1;

  /**
   * A sowing.
   *
   * @param mark how it stands, by shape
   * @param parts whole plants, which add up to {@code lacking}
   */
  public record Row(String id, String mark, long lacking, List<Part> parts, String sentence) {}

  /** What takes so many plants; below 0 where it spares them. */
  public record Part(String name, long plants) {}

  /** Whether it is folded on a phone, where an account takes five lines and more. */
  public boolean isLong() {
    return rows.size() > MANY;
  }

  static Reasons of(Forecast forecast) {
    List<Row> rows =
        PlantsSection.worstFirst(forecast).stream()
            .filter(s -> Safety.of(s) != Safety.SAFE)
            .flatMap(s -> row(forecast.scenario(), s).stream())
            .toList();
    return rows.isEmpty()
        ? new Reasons(rows, "", "")
        : new Reasons(
            rows,
            springs(withRoom(forecast), forecast.seasons()),
            "What room takes is measured: the plants lacking less those lacking on the same springs"
                + " with endless room. Too few trays are those that would not give the plants needed"
                + " even if the spring went as half of all springs do. What is lacking even so is"
                + " shared among all that took plants in that spring, by how many each took.");
  }

  /** On how many springs endless room was tried. */
  private static int withRoom(Forecast forecast) {
    return forecast.sowings().stream()
        .flatMap(s -> Stream.ofNullable(s.shortfall()))
        .mapToInt(Shortfall::springs)
        .max()
        .orElse(0);
  }

  /** Beside the accounts, as their chances differ from the table's; empty where it has no more. */
  static String springs(int withRoom, int seasons) {
    return withRoom >= seasons
        ? ""
        : "Its numbers are of the first "
            + Words.plural(withRoom, "spring")
            + ", which were tried with endless room too, so that a chance may be some points off"
            + " the table's, of all "
            + Words.plural(seasons, "spring")
            + ".";
  }

  private static Optional<Row> row(Scenario scenario, SowingForecast sowing) {
    Shortfall shortfall = sowing.shortfall();
    if (shortfall == null || Math.round(shortfall.lacking()) == 0) {
      return Optional.empty();
    }
    List<Part> parts = parts(shortfall);
    return Optional.of(
        new Row(
            sowing.sowing().id(),
            SafetyWords.mark(Safety.of(sowing)),
            Math.round(shortfall.lacking()),
            parts,
            sentence(scenario, sowing, shortfall, parts)));
  }

  /** The largest first, and in the end what makes up the sum. */
  private static List<Part> parts(Shortfall shortfall) {
    record Share(String name, double plants) {}
    List<Share> shares = new ArrayList<>();
    shares.add(new Share(LACK_OF_ROOM, shortfall.room().mean()));
    shares.add(new Share(TOO_FEW_TRAYS, shortfall.tooFewTrays()));
    shares.add(new Share("late for the bed", shortfall.late()));
    for (Map.Entry<Loss, Double> lost : shortfall.lost().entrySet()) {
      shares.add(new Share(TradeWords.shortLoss(lost.getKey()), lost.getValue()));
    }
    List<Part> parts = new ArrayList<>();
    shares.stream()
        .filter(s -> Math.abs(s.plants()) >= WORTH_A_WORD)
        .sorted(Comparator.comparingDouble(Share::plants).reversed().thenComparing(Share::name))
        .forEach(s -> parts.add(new Part(s.name(), Math.round(s.plants()))));
    long others = Math.round(shortfall.lacking()) - parts.stream().mapToLong(Part::plants).sum();
    if (others != 0) {
      parts.add(new Part("all others and rounding", others));
    }
    return parts;
  }

  private static String sentence(
      Scenario scenario, SowingForecast sowing, Shortfall shortfall, List<Part> parts) {
    List<String> told = parts.stream().map(p -> part(scenario, sowing, shortfall, p)).toList();
    return "lacks "
        + Words.count((double) Math.round(shortfall.lacking()))
        + " of "
        + Words.count(sowing.sowing().plantsNeeded())
        + ": "
        + String.join(", ", told)
        + ". With room for all its chance would be "
        + Words.chance(shortfall.chanceWithRoom())
        + "; on the same springs it is "
        + Words.chance(shortfall.chance())
        + ".";
  }

  private static String part(
      Scenario scenario, SowingForecast sowing, Shortfall shortfall, Part part) {
    String plants = Words.count((double) part.plants());
    if (part.name().equals(TOO_FEW_TRAYS)) {
      return "%s for %s (%s plants in an ordinary spring)"
          .formatted(plants, TOO_FEW_TRAYS, give(sowing, shortfall));
    }
    if (!part.name().equals(LACK_OF_ROOM)) {
      return plants + " " + part.name();
    }
    return plants
        + " ± "
        + Words.count(shortfall.room().halfWidth())
        + " for "
        + LACK_OF_ROOM
        + longestWait(scenario, sowing).map(w -> " (" + w + ")").orElse("");
  }

  /** What can be expected of its trays, such as {@code 12 give about 870}. */
  private static String give(SowingForecast sowing, Shortfall shortfall) {
    int trays = sowing.sowing().trays();
    return (trays == 1 ? "1 gives" : trays + " give")
        + " about "
        + Words.count(shortfall.ordinary());
  }

  /** What its trays wait for the longest, and how long. */
  private static Optional<String> longestWait(Scenario scenario, SowingForecast sowing) {
    return Stream.of(RoomWait.values())
        .max(Comparator.comparingDouble(step -> days(sowing, step)))
        .filter(step -> days(sowing, step) >= A_WAIT)
        .map(
            step ->
                "a tray waits %s %s, for %s"
                    .formatted(
                        Words.plural(days(sowing, step), "day"),
                        TradeWords.step(step),
                        Forecast.waitedFor(scenario, sowing.sowing(), step)));
  }

  private static double days(SowingForecast sowing, RoomWait step) {
    return sowing.waiting().getOrDefault(step, 0.0) / sowing.sowing().trays();
  }

  /**
   * What makes up most of what a sowing lacks, for a line; empty where nothing does.
   *
   * @param isLong whether there is room for more than its name
   */
  static Optional<String> most(SowingForecast sowing, boolean isLong) {
    Shortfall shortfall = sowing.shortfall();
    if (shortfall == null || Safety.of(sowing) == Safety.SAFE) {
      return Optional.empty();
    }
    return parts(shortfall).stream()
        .findFirst()
        .filter(p -> p.plants() > 0 && p.plants() >= MOST * shortfall.lacking())
        .map(
            p ->
                isLong && p.name().equals(TOO_FEW_TRAYS)
                    ? p.name() + " (" + give(sowing, shortfall) + ")"
                    : p.name());
  }
}

package propcap.study.order;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Worded;
import propcap.study.RunSettings;
import propcap.study.forecast.Safety;

/**
 * What a season's sowings take: trays by the chance to have enough plants of each, and from these
 * seed, trays, pots, mix and labels.
 *
 * @param chance with which each sowing should have its plants on time, 0 to 1
 * @param sowings in the plan's order
 * @param safeAsOrdered sowings that are safe with the trays ordered, in the places as they are and
 *     in other seasons than those by which the trays were chosen (see {@link Safety})
 * @param lots in the order in which they are first sown
 * @param items what to order
 */
public record Supplies(
    Scenario scenario,
    RunSettings settings,
    int seasons,
    double chance,
    List<ForSowing> sowings,
    int safeAsOrdered,
    List<ForLot> lots,
    List<Item> items) {
  public Supplies {
    sowings = List.copyOf(sowings);
    lots = List.copyOf(lots);
    items = List.copyOf(items);
  }

  /**
   * The plan with the trays ordered, of what needs none those planned; empty where they are the
   * plan's.
   */
  public Optional<Scenario> proposed() {
    return Optional.of(scenario.withSowings(sowings.stream().map(Supplies::asOrdered).toList()))
        .filter(ordered -> !ordered.sowings().equals(scenario.sowings()));
  }

  private static Sowing asOrdered(ForSowing sowing) {
    return sowing.ordered() == 0 ? sowing.sowing() : sowing.sowing().withTrays(sowing.ordered());
  }

  /** Sowings that are safe as planned, in the places as they are. */
  public int safe() {
    return safe(ForSowing::chanceInHouse);
  }

  /** Sowings that would be safe as planned if every tray found room when it is due. */
  public int safeWithRoom() {
    return safe(ForSowing::chanceAsPlanned);
  }

  /** Sowings that are not safe as planned, and would be if every tray found room. */
  public int lackingRoom() {
    return (int)
        sowings.stream()
            .filter(s -> !isSafe(s, s.chanceInHouse()) && isSafe(s, s.chanceAsPlanned()))
            .count();
  }

  private int safe(ToDoubleFunction<ForSowing> chance) {
    return (int) sowings.stream().filter(s -> isSafe(s, chance.applyAsDouble(s))).count();
  }

  private static boolean isSafe(ForSowing sowing, double chance) {
    return Safety.isSafe(chance, sowing.sowing());
  }

  /**
   * Trays for one sowing, if every tray finds room when it is due.
   *
   * @param trays the fewest that have the plants needed on time with the chance; null: no number
   *     tried has
   * @param tried the most trays that were tried
   * @param chanceAsPlanned with the plan's trays
   * @param chanceInHouse with the plan's trays in the places as they are
   * @param most the chance with as many trays as were tried
   * @param plantsPerTray on time, mean over trays and seasons
   * @param traysByMean needed plants by that mean, rounded up: what a flat percentage would give
   * @param chanceByMean with so many trays
   * @param cellsBySeed cells in which as many seedlings as plants are needed come up with the
   *     chance, by germination alone; null: no number does
   * @param money what the newsvendor says; null: no money is asked
   */
  public record ForSowing(
      Sowing sowing,
      Crop crop,
      @Nullable Integer trays,
      int tried,
      double chanceAsPlanned,
      double chanceInHouse,
      double most,
      double plantsPerTray,
      @Nullable Integer traysByMean,
      @Nullable Double chanceByMean,
      @Nullable Integer cellsBySeed,
      @Nullable ByMoney money) {
    /** The trays that are ordered for: those of the answer, or else those of the plan. */
    public int ordered() {
      return trays == null ? sowing.trays() : trays;
    }
  }

  /**
   * The newsvendor's answer for a sowing.
   *
   * @param costs of a plant lacking and of one too many
   * @param trays the fewest with which the chance to have enough is the critical ratio; null: no
   *     number tried
   */
  public record ByMoney(Newsvendor costs, @Nullable Integer trays) {}

  /**
   * Seed of one lot.
   *
   * @param trays ordered for its sowings
   * @param again trays sown again after failing in the house as it is: no more in so many seasons
   *     as the chance
   * @param seeds for all of them
   * @param grams null where the thousand-seed weight is not known
   */
  public record ForLot(
      Crop crop, String lot, int trays, int again, long seeds, @Nullable Double grams) {}

  /** What is ordered, in the order of the list. */
  public enum Kind implements Worded {
    SEED,
    TRAYS,
    POTS,
    MIX,
    LABELS
  }

  /**
   * One thing to order.
   *
   * @param what such as {@code onion, lot onion-a}
   * @param unit such as {@code seeds}
   * @param arithmetic how the amount comes about, in a sentence
   */
  public record Item(Kind kind, String what, double amount, String unit, String arithmetic) {}
}

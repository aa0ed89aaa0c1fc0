package propcap.report.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.plan.Planned;
import propcap.study.statistics.Difference;

/**
 * What a better plan changes of one sowing, and what the change was measured to do by itself, in
 * words. No other reason is told: what was seen of it is not what came of its change.
 *
 * @param effect what was measured of it; empty: nothing was
 */
record PlanChange(Planned planned, Planned.Change change, Optional<Planned.Effect> effect) {
  static List<PlanChange> of(Planned planned) {
    List<Planned.Change> changes = planned.changes();
    List<Planned.Effect> effects = planned.effects();
    return IntStream.range(0, changes.size())
        .mapToObj(
            c ->
                new PlanChange(
                    planned,
                    changes.get(c),
                    effects.isEmpty() ? Optional.empty() : Optional.of(effects.get(c))))
        .toList();
  }

  private SowingForecast before() {
    return planned.before().sowings().get(change.sowing());
  }

  private SowingForecast after() {
    return planned.kept().sowings().get(change.sowing());
  }

  Season season() {
    return planned.start().season();
  }

  /** How much it does for a chance, its own or another's: what does most is told first. */
  double gained() {
    return effect
        .map(e -> Math.max(e.own().mean(), mean(e.others())))
        .orElse(after().chanceMet() - before().chanceMet());
  }

  private static double mean(@Nullable Difference difference) {
    return difference == null ? 0 : difference.mean();
  }

  /**
   * Such as {@code tomato-2 moves 6 days later: by itself it raises its chance by 31 ± 6 points}
   */
  String sentence() {
    return change.to().id() + " " + Words.list(what()) + ": " + why() + ".";
  }

  /** What is changed, such as {@code moves 6 days later}. */
  List<String> what() {
    List<String> what = new ArrayList<>();
    if (change.daysLater() != 0) {
      what.add("moves " + Dates.shift(change.daysLater()));
    }
    if (change.traysMore() != 0) {
      what.add(
          (change.daysLater() == 0 ? "has " : "")
              + Words.plural(Math.abs(change.traysMore()), "tray")
              + (change.traysMore() > 0 ? " more" : " fewer"));
    }
    if (change.place() != null) {
      what.add("goes to the " + change.place() + " first");
    }
    return what;
  }

  /** Why: what the change was measured to do by itself, and nothing else. */
  String why() {
    return effect.map(this::does).orElse("what it does by itself was not measured");
  }

  /** Such as {@code by itself it raises its chance by 31 ± 6 points and saves 2 trays}. */
  private String does(Planned.Effect effect) {
    List<String> does = new ArrayList<>();
    Integer other = effect.other();
    Difference others = effect.others();
    if (effect.own().low() > 0) {
      does.add("raises its chance by " + points(effect.own()));
    }
    if (other != null && others != null) {
      String id = planned.start().sowings().get(other).id();
      String chance = does.isEmpty() ? "raises the chance of " : "that of ";
      does.add(chance + id + " by " + points(others));
    }
    worth(effect.worth()).ifPresent(does::add);
    return "by itself it "
        + (does.isEmpty() ? "does nothing that could be told from chance" : Words.list(does));
  }

  private static String points(Difference chance) {
    return Words.estimate(100 * chance.mean(), 100 * chance.halfWidth()) + " points";
  }

  private Optional<String> worth(Difference worth) {
    if (!worth.isClear()) {
      return Optional.empty();
    }
    double amount = Math.abs(worth.mean());
    return Optional.of(
        Money.of(planned.start())
            .map(
                money ->
                    (worth.mean() > 0 ? "brings " : "costs ")
                        + Money.level(amount, worth.halfWidth())
                        + " "
                        + money.currency())
            .orElseGet(
                () -> (worth.mean() > 0 ? "saves " : "takes ") + Words.plural(amount, "tray")));
  }
}

package propcap.study.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.statistics.Difference;

/**
 * A better plan, and how much better it is on springs that had no part in finding it.
 *
 * @param question what was asked
 * @param settings of the search: its seed is that of the springs on which plans were tried
 * @param search how the search went
 * @param freshSeed of the springs on which the two plans were compared
 * @param before the plan as it was, on the fresh springs
 * @param found the plan that was found, on the same
 * @param isConfirmed whether the found plan is better beyond doubt, and gives up no sowing that may
 *     not be; if not, the plan as it was is kept
 * @param goals of each sowing: the chance with which its plants must be on time
 * @param gain margin of a season more than before; where no money is asked, trays saved
 * @param met sowings more than before whose plants are on time, among those that miss their goal
 *     beyond the error under either plan; no difference where none does
 * @param givenUp the sowings that the found plan gives up
 * @param effects what each of the changes does, in the order of {@link #changes()}; none where it
 *     was not measured
 * @param alone each sowing alone
 * @param bound what no plan passes
 */
public record Planned(
    PlanningQuestion question,
    RunSettings settings,
    Search search,
    long freshSeed,
    Forecast before,
    Forecast found,
    boolean isConfirmed,
    List<Double> goals,
    Difference gain,
    Difference met,
    List<GivenUp> givenUp,
    List<Effect> effects,
    List<AloneInHouse> alone,
    Bound bound) {

  /** Springs on which each change is tried by itself, at most. */
  public static final int EFFECT_SPRINGS = 200;

  /**
   * How a search went.
   *
   * @param springs on which plans were tried
   * @param tries plans tried
   * @param startedFrom what the search began with
   * @param isStopped whether it was stopped before its time
   * @param changed sowings that were changed before those changes were taken back that bring
   *     nothing
   */
  public record Search(int springs, int tries, Start startedFrom, boolean isStopped, int changed) {}

  /** What a search can begin with. */
  public enum Start {
    /** The plan as it was. */
    AS_IT_WAS,
    /** The timetable of mean days. */
    TIMETABLE,
    /** Each sowing at its own best, as if it were alone. */
    EACH_ALONE
  }

  /**
   * A sowing that the found plan gives up: it does not reach its goal, and beyond doubt does worse
   * than under the plan as it was.
   *
   * @param isAllowed whether it may be given up
   */
  public record GivenUp(int sowing, boolean isAllowed) {}

  /**
   * What a change does: the plan to sow by, less the same with this one change taken back.
   *
   * @param worth margin of a season; where no money is asked, trays saved
   * @param own chance of the sowing itself to have its plants on time
   * @param other another sowing, the one of which the chance rises most, beyond doubt; null: none
   * @param others its chance; null where there is none
   */
  public record Effect(
      Difference worth, Difference own, @Nullable Integer other, @Nullable Difference others) {
    /** Whether nothing good that it does can be told from chance. */
    boolean isForNothing() {
      return own.low() <= 0 && other == null && !(worth.isClear() && worth.mean() > 0);
    }
  }

  /**
   * A sowing alone, with endless room and hands, on the surest of its days and in all the trays
   * that it may have.
   *
   * @param sowing as it is then sown
   * @param chance to have its plants on time
   * @param isOutOfReach whether it misses its goal beyond doubt on each of its days that was tried
   */
  public record AloneInHouse(Sowing sowing, double chance, boolean isOutOfReach) {}

  /**
   * What no plan passes that sows all its trays: no seedling is lost that could be kept, nothing
   * comes late, and no place costs anything.
   *
   * @param toBest margin of a season that it has more than the plan to sow by; where no money is
   *     asked, trays that the sowings at their goal have more than the fewest that could reach it
   * @param of what that is a part: the margin that no plan passes; without money, the trays of the
   *     sowings at their goal
   * @param chances of each sowing to have its plants, in all the trays that it may have
   */
  public record Bound(Difference toBest, double of, List<Double> chances) {}

  /** The plan that was found; empty where the one as it was is kept. */
  public Optional<Scenario> proposed() {
    return Optional.of(found.scenario()).filter(s -> isConfirmed);
  }

  /** The plan to sow by: the found one where it is confirmed, or else the one as it was. */
  public Forecast kept() {
    return isConfirmed ? found : before;
  }

  public Scenario start() {
    return before.scenario();
  }

  /**
   * A sowing that the kept plan changes.
   *
   * @param daysLater less than 0: earlier
   * @param traysMore less than 0: fewer
   * @param place in which it germinates now; null: as before
   */
  public record Change(
      int sowing, Sowing from, Sowing to, int daysLater, int traysMore, @Nullable String place) {}

  /** What the kept plan changes, in the plan's order. */
  public List<Change> changes() {
    List<Sowing> from = before.scenario().sowings();
    List<Sowing> to = kept().scenario().sowings();
    return IntStream.range(0, from.size())
        .filter(s -> !from.get(s).equals(to.get(s)))
        .mapToObj(s -> change(s, from.get(s), to.get(s)))
        .toList();
  }

  private Change change(int s, Sowing from, Sowing to) {
    List<String> places = start().cropOf(from).germinateIn();
    String was = from.germinateIn() == null ? places.get(0) : from.germinateIn();
    String is = to.germinateIn() == null ? places.get(0) : to.germinateIn();
    return new Change(
        s,
        from,
        to,
        start().season().dayOf(to.sow()) - start().season().dayOf(from.sow()),
        to.trays() - from.trays(),
        is.equals(was) ? null : is);
  }

  /** The sowings that the kept plan leaves below their goal, beyond its error, by number. */
  public List<Integer> missed() {
    return IntStream.range(0, goals.size())
        .filter(s -> kept().sowings().get(s).chanceMetHigh() < goals.get(s))
        .boxed()
        .toList();
  }
}

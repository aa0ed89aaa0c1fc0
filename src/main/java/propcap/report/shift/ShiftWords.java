package propcap.report.shift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.report.kit.Dates;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.shift.Shifts;
import propcap.study.shift.Shifts.Group;
import propcap.study.shift.Shifts.Point;
import propcap.study.statistics.Difference;

/** When to sow a group, in words. */
record ShiftWords(Group group, Optional<Money> money) {

  static List<ShiftWords> of(Shifts shifts) {
    Optional<Money> money = Money.of(shifts.scenario());
    return shifts.groups().stream().map(g -> new ShiftWords(g, money)).toList();
  }

  Point best() {
    return group.points().stream()
        .filter(p -> p.days() == group.best())
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("the best shift was not tried"));
  }

  /** Whether the best differs clearly from sowing on the day of the plan. */
  boolean isClear() {
    return group.clearlyBest().isPresent();
  }

  private List<Integer> others() {
    return group.asGood().stream().filter(d -> d != group.best()).toList();
  }

  /** The answer in a sentence or two. */
  String verdict() {
    if (group.points().size() == 1) {
      return group.match() + " was tried only " + Dates.shift(group.best()) + ".";
    }
    if (group.best() == 0) {
      return "Leave " + group.match() + " as it is: no shift tried does better." + notTold();
    }
    if (!isClear()) {
      return "Leave "
          + group.match()
          + " as it is: "
          + Dates.shift(group.best())
          + " came out best, but the springs do not tell it from no shift ("
          + differences(best())
          + ")."
          + notTold();
    }
    return "Sow "
        + group.match()
        + " "
        + Dates.shift(group.best())
        + ": "
        + differences(best())
        + "."
        + atACost()
        + notTold()
        + atTheEdge();
  }

  /** What is best for the margin may not be for the plants. */
  private String atACost() {
    return best().allToUnshifted().isLess() && best().marginToUnshifted() != null
        ? " It brings margin and costs plants on time."
        : "";
  }

  /** That the best is an end of what was tried, beyond which there may be a better one. */
  private String atTheEdge() {
    int last = group.points().size() - 1;
    return group.best() == group.points().get(0).days()
        ? " No earlier day was tried: it may be better still."
        : group.best() == group.points().get(last).days()
            ? " No later day was tried: it may be better still."
            : "";
  }

  private String notTold() {
    List<String> days = new ArrayList<>();
    others().stream().filter(d -> isClear() || d != 0).forEach(d -> days.add(Words.signed(d)));
    return days.isEmpty()
        ? ""
        : " "
            + Words.list(days)
            + (days.equals(List.of("+1")) || days.equals(List.of("-1")) ? " day" : " days")
            + (days.size() == 1 ? " is" : " are")
            + " not told apart from it.";
  }

  private String differences(Point point) {
    String plants = Words.difference(point.toUnshifted());
    Difference margin = point.marginToUnshifted();
    String all =
        point.allToUnshifted().equals(point.toUnshifted())
            ? " plants on time"
            : " of these plants on time; "
                + Words.difference(point.allToUnshifted())
                + " counting all crops";
    return margin == null || money.isEmpty()
        ? plants + all
        : plants + all + "; margin " + money.get().difference(margin) + " a season";
  }

  /** Shifts as good as the best, itself left out, such as {@code 0, -14}. */
  String asGood() {
    return others().isEmpty()
        ? "none"
        : String.join(", ", others().stream().map(d -> Words.signed(d)).toList());
  }
}

package propcap.study.size;

import java.util.List;

/**
 * What the planner orders for the size that was found.
 *
 * @param lines in the order in which they are written
 * @param arithmetic how the amounts come about, step by step, in sentences
 */
public record FurnishingList(List<Line> lines, List<String> arithmetic) {
  public FurnishingList {
    lines = List.copyOf(lines);
    arithmetic = List.copyOf(arithmetic);
  }

  /**
   * One thing to order.
   *
   * @param place for which, such as {@code Glasshouse}
   * @param what such as {@code table area}
   * @param amount the bare number
   * @param unit what it counts, such as {@code m2} or {@code tables}
   * @param shown the amount as it is read, such as {@code 24.1 m2 (260 ft2)}
   */
  public record Line(String place, String what, double amount, String unit, String shown) {}
}

package propcap.plan;

import java.util.List;

/**
 * A piece of work that starts on one of some days and then holds room for a while, such as a
 * sowing's trays in the heat, on the tables and in the yard.
 *
 * @param options what it comes to start on each day, in rising order of the days; all have as many
 *     stays, each in the same room
 */
public record Job(String name, List<Option> options) {

  /**
   * A start.
   *
   * @param start day
   * @param cost of starting then, 0 or more: what it loses against its best day
   */
  public record Option(int start, int cost, List<Stay> stays) {
    public Option {
      stays = List.copyOf(stays);
    }

    /** The day on which the last of its stays ends; the start where it has none. */
    public int end() {
      return stays.stream().mapToInt(Stay::to).max().orElse(start);
    }
  }

  /**
   * Spaces held in a room from a day up to another, which is free again.
   *
   * @param room its number in the timetable
   */
  public record Stay(int room, int from, int to, int spaces) {
    public Stay {
      if (to < from || spaces < 0) {
        throw new IllegalArgumentException(
            "a stay holds 0 spaces or more and ends after it begins, was %s spaces, %s to %s"
                .formatted(spaces, from, to));
      }
    }
  }

  public Job {
    options = List.copyOf(options);
    if (options.isEmpty()) {
      throw new IllegalArgumentException(name + " has no day on which it may start");
    }
    List<Integer> rooms = rooms(options.get(0));
    for (Option option : options) {
      if (!rooms(option).equals(rooms)) {
        throw new IllegalArgumentException(name + " must pass the same rooms whenever it starts");
      }
    }
  }

  private static List<Integer> rooms(Option option) {
    return option.stays().stream().map(Stay::room).toList();
  }
}

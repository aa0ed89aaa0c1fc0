package propcap.files.log;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedEvent;
import propcap.farm.Sowing;
import propcap.files.text.CsvFile;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.SourceText;

/**
 * A row of a log, as far as it can be read by itself.
 *
 * @param sowing its name; empty where it could not be read
 * @param trays empty where they could not be read
 * @param event empty where it could not be read
 * @param date null where it could not be read
 * @param plants in each of its trays, a mean where it has several; null: not counted
 */
public record LogRow(
    Fields fields,
    String sowing,
    Optional<Trays> trays,
    Optional<LoggedEvent> event,
    @Nullable LocalDate date,
    @Nullable Double plants) {
  static final List<String> COLUMNS = List.of("sowing", "tray", "event", "date", "plants");
  static final List<String> OPTIONAL = List.of("crop", "place", "trays");

  /** The columns of a log that Propcap begins. */
  public static final List<String> WRITTEN =
      List.of("sowing", "tray", "event", "date", "plants", "place", "trays");

  private static final int MOST_ROWS = 500_000;

  private static final int MOST_PLANTS = 10_000;

  /** A spreadsheet takes 5-16 for a day in May, so words will do as well. */
  private static final Pattern RANGE = Pattern.compile("([0-9]{1,6}) *(?:-|–|to) *([0-9]{1,6})");

  private static final Pattern DAY = Pattern.compile("[0-9]{1,2}-[A-Z][a-z]{2}");
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,6}(\\.[0-9]{1,9})?");

  /**
   * Which trays a row speaks of.
   *
   * @param names of them; none: those with the lowest numbers that its event can take
   * @param count how many; empty: all of them
   */
  record Trays(List<String> names, Optional<Integer> count) {
    static Trays named(List<String> names) {
      return new Trays(List.copyOf(names), Optional.of(names.size()));
    }

    boolean isOne() {
      return count.isPresent() && count.get() == 1;
    }
  }

  /** The table of a log. */
  public static CsvFile table(SourceText source, Faults faults) {
    return CsvFile.withNotes(source, COLUMNS, OPTIONAL, MOST_ROWS, faults);
  }

  public static LogRow read(Fields fields) {
    Optional<String> sowing = fields.name("sowing");
    Optional<Trays> trays = fields.isBlank("tray") ? counted(fields) : named(fields);
    return new LogRow(
        fields,
        sowing.orElse(""),
        trays,
        fields.choice("event", List.of(LoggedEvent.values()), LoggedEvent::word),
        fields.date("date"),
        fields.isBlank("plants") ? null : plants(fields, trays));
  }

  private static Optional<Trays> counted(Fields fields) {
    if (fields.isBlank("trays")) {
      return Optional.of(new Trays(List.of(), Optional.empty()));
    }
    int count = fields.count("trays", 1, Sowing.MOST_TRAYS);
    return count < 1 ? Optional.empty() : Optional.of(new Trays(List.of(), Optional.of(count)));
  }

  private static Optional<Trays> named(Fields fields) {
    Optional<String> name = fields.name("tray");
    Matcher range = RANGE.matcher(name.orElse(""));
    Optional<Trays> trays = name.map(n -> Trays.named(List.of(n)));
    if (range.matches()) {
      int first = Integer.parseInt(range.group(1));
      int last = Integer.parseInt(range.group(2));
      if (first < 1 || last < first || last - first >= Sowing.MOST_TRAYS) {
        fields.wrong("tray", "which is no range of trays", "the first and the last, as 5-16");
        return Optional.empty();
      }
      trays =
          Optional.of(
              Trays.named(IntStream.rangeClosed(first, last).mapToObj(Integer::toString).toList()));
    } else if (DAY.matcher(name.orElse("")).matches()) {
      fields.doubt("tray", "which a spreadsheet makes of two numbers", "5 to 16 is left as it is");
    }
    if (trays.isPresent() && !fields.isBlank("trays")) {
      int named = trays.get().names().size();
      int count = fields.count("trays", 1, Sowing.MOST_TRAYS);
      if (count >= 1 && count != named) {
        fields.wrong("trays", "but tray names " + named, "one of the two");
      }
    }
    return trays;
  }

  private static @Nullable Double plants(Fields fields, Optional<Trays> trays) {
    if (trays.isEmpty() || trays.get().isOne()) {
      int plants = fields.count("plants", 0, MOST_PLANTS);
      return plants < 0 ? null : (double) plants;
    }
    return fields
        .text(
            "plants",
            text ->
                Optional.of(text.text().strip())
                    .filter(t -> NUMBER.matcher(t).matches())
                    .map(Double::valueOf)
                    .filter(n -> n <= MOST_PLANTS),
            "a number from 0 to " + MOST_PLANTS + ", in each tray")
        .orElse(null);
  }
}

package propcap.files.log;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import propcap.farm.Season;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;

/** Whether the dates of a whole log, each right in itself, can be meant together. */
public final class LogDates {
  /** Nobody keeps trays for longer, nor plans so far ahead. */
  private static final int CENTURY_APART = 50;

  /** Logs of more years than these, before and after their middle, are seldom. */
  private static final int YEARS_APART = 10;

  private final List<Row> rows = new ArrayList<>();

  private record Row(FilePosition spot, LocalDate date) {}

  /** Notes a row's date; a fault where no log of the farm can have it. */
  public void add(Fields fields, LocalDate date, Season season) {
    if (Math.abs(date.getYear() - season.start().getYear()) > CENTURY_APART) {
      fields.wrong(
          "date",
          "another century than the season's",
          "a date within " + CENTURY_APART + " years of " + season.start());
    } else {
      rows.add(new Row(fields.spot("date"), date));
    }
  }

  /** Tells what is unlikely, each kind once, at its first row. */
  public void doubt(Season season, Faults faults) {
    if (rows.isEmpty()) {
      return;
    }
    doubt(
        row -> row.date().isAfter(season.end()),
        "a date after the season",
        "a log tells what has been",
        faults);
    int middle =
        rows.stream()
            .map(Row::date)
            .sorted(Comparator.naturalOrder())
            .toList()
            .get(rows.size() / 2)
            .getYear();
    List<Row> past = rows.stream().filter(r -> !r.date().isAfter(season.end())).toList();
    past.stream()
        .map(r -> Math.abs(r.date().getYear() - middle))
        .filter(apart -> apart > YEARS_APART)
        .findFirst()
        .ifPresent(
            apart ->
                doubt(
                    row ->
                        !row.date().isAfter(season.end())
                            && Math.abs(row.date().getYear() - middle) > YEARS_APART,
                    "a date " + apart + " years from most of the log",
                    "a slip in the year?",
                    faults));
  }

  private void doubt(Predicate<Row> is, String what, String meant, Faults faults) {
    List<Row> such = rows.stream().filter(is).toList();
    if (!such.isEmpty()) {
      Row first = such.get(0);
      faults.warn(
          first.spot(),
          what
              + ", "
              + first.date()
              + (such.size() == 1 ? "" : ", in " + such.size() + " rows, this the first"),
          meant);
    }
  }
}

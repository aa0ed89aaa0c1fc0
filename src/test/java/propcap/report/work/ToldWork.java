package propcap.report.work;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.CalendarComponent;
import propcap.farm.TrayTask;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;

/**
 * What each telling of a season's work says, read out of its text again: trays by job and day (such
 * as {@code off-heat 2027-03-08}), or by job where it has no days.
 */
record ToldWork(WorkCalendar calendar, Period all) {
  private static final Pattern LINE = Pattern.compile("([A-Z][a-z ]+): ([0-9,]+) trays?( .*)?");
  private static final Pattern SOWN = Pattern.compile(".*? ([0-9]+)(?: of [0-9]+)?");
  private static final Pattern EVENT =
      Pattern.compile("([A-Z][a-z ]+): .*, ([0-9,]+)(?: of [0-9,]+)? trays?");

  static ToldWork of(WorkCalendar calendar) {
    return new ToldWork(calendar, Period.of(calendar.scenario().season()));
  }

  private static String word(String name) {
    for (TrayTask job : TrayTask.values()) {
      if (name.equals(WorkWords.job(job)) || name.equals(WorkWords.shortJob(job))) {
        return job.word();
      }
    }
    throw new IllegalArgumentException("no such job: " + name);
  }

  private static int number(String text) {
    return Integer.parseInt(text.replace(",", ""));
  }

  private static void add(Map<String, Integer> sums, String key, int trays) {
    if (trays > 0) {
      sums.merge(key, trays, Integer::sum);
    }
  }

  /** Sums of days as sums of jobs. */
  static Map<String, Integer> byJob(Map<String, Integer> byDay) {
    Map<String, Integer> sums = new TreeMap<>();
    byDay.forEach((key, trays) -> add(sums, key.substring(0, key.indexOf(' ')), trays));
    return sums;
  }

  private static Map<String, Integer> matched(Pattern pattern, List<String> lines) {
    Map<String, Integer> sums = new TreeMap<>();
    for (String line : lines) {
      Matcher matcher = pattern.matcher(line);
      if (matcher.matches()) {
        add(sums, word(matcher.group(1)), number(matcher.group(2)));
      }
    }
    return sums;
  }

  Map<String, Integer> onTheTerminal() {
    return matched(LINE, headlines(calendar, all));
  }

  Map<String, Integer> onWeekSheets() {
    Map<String, Integer> sums = new TreeMap<>();
    LocalDate monday = all.weeks().get(0);
    for (WeekSheets.Week week : WeekSheets.of(calendar, all, "test").weeks()) {
      for (WeekSheets.Block block : week.blocks()) {
        for (WeekSheets.Row row : block.rows()) {
          for (int d = 0; d < 7; d++) {
            String trays = row.days().get(d);
            add(
                sums,
                word(block.job()) + " " + monday.plusDays(d),
                trays.isEmpty() ? 0 : number(trays));
          }
        }
      }
      monday = monday.plusWeeks(1);
    }
    return sums;
  }

  /** By the sums in the rows and in the heads of the blocks: both must be those of the days. */
  Map<String, Integer> inRowsOfWeekSheets() {
    Map<String, Integer> sums = new TreeMap<>();
    weeks().forEach(b -> b.rows().forEach(r -> add(sums, word(b.job()), number(r.trays()))));
    return sums;
  }

  Map<String, Integer> inHeadsOfWeekSheets() {
    Map<String, Integer> sums = new TreeMap<>();
    weeks().forEach(b -> add(sums, word(b.job()), number(b.trays().replaceFirst(" .*", ""))));
    return sums;
  }

  private List<WeekSheets.Block> weeks() {
    return WeekSheets.of(calendar, all, "test").weeks().stream()
        .flatMap(w -> w.blocks().stream())
        .toList();
  }

  Map<String, Integer> onMonthSheets() {
    Map<String, Integer> sums = new TreeMap<>();
    LocalDate first = all.months().get(0);
    for (MonthSheets.Month month : MonthSheets.of(calendar, all, "test").months()) {
      for (MonthSheets.Week week : month.weeks()) {
        for (MonthSheets.Day day : week.days()) {
          for (MonthSheets.Line line : day.lines()) {
            Matcher sown = SOWN.matcher(line.what());
            String date = first.withDayOfMonth(Integer.parseInt(day.number())).toString();
            add(
                sums,
                word(line.job()) + " " + date,
                number(sown.matches() ? sown.group(1) : line.what()));
          }
        }
      }
      first = first.plusMonths(1);
    }
    return sums;
  }

  List<NamedCsvRecord> rows() {
    try (CsvReader<NamedCsvRecord> read =
        CsvReader.builder().ofNamedCsvRecord(CalendarFiles.csv(calendar, all))) {
      return read.stream().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Map<String, Integer> inTheTable() {
    Map<String, Integer> sums = new TreeMap<>();
    rows()
        .forEach(
            row ->
                add(
                    sums,
                    row.getField("job") + " " + row.getField("date"),
                    number(row.getField("trays"))));
    return sums;
  }

  JsonObject json() {
    return JsonParser.parseString(CalendarFiles.json(calendar, all, "test")).getAsJsonObject();
  }

  Map<String, Integer> inJson() {
    Map<String, Integer> sums = new TreeMap<>();
    for (JsonElement task : json().getAsJsonArray("tasks")) {
      JsonArray stints = task.getAsJsonObject().getAsJsonArray("stints");
      for (JsonElement stint : stints) {
        add(
            sums,
            task.getAsJsonObject().get("job").getAsString()
                + " "
                + stint.getAsJsonObject().get("date").getAsString(),
            stint.getAsJsonObject().get("trays").getAsInt());
      }
    }
    return sums;
  }

  Map<String, Integer> inTheFeed() {
    String feed = CalendarFeed.of(calendar, all, Instant.EPOCH);
    try {
      List<CalendarComponent> events =
          new CalendarBuilder().build(new StringReader(feed)).getComponents("VEVENT");
      return matched(
          EVENT,
          events.stream()
              .map(e -> e.getProperty("SUMMARY").map(Property::getValue).orElseThrow())
              .toList());
    } catch (IOException | ParserException e) {
      throw new IllegalStateException(e);
    }
  }

  int labels() {
    return TrayLabels.of(calendar, all, LabelSheet.COMMON, "test").sheets().stream()
        .mapToInt(List::size)
        .sum();
  }

  /** Hours by the heads of the days, such as {@code 3.5 h}, on each working day of the season. */
  List<String> hoursOnWeekSheets() {
    return WeekSheets.of(calendar, all, "test").weeks().stream()
        .flatMap(w -> w.days().stream())
        .filter(d -> !d.isRest())
        .map(WeekSheets.Head::hours)
        .toList();
  }

  List<String> hoursOnMonthSheets() {
    return MonthSheets.of(calendar, all, "test").months().stream()
        .flatMap(m -> m.weeks().stream())
        .flatMap(w -> w.days().stream())
        .filter(d -> d.isOf() && !d.isRest())
        .map(MonthSheets.Day::hours)
        .toList();
  }

  String hoursOnTheTerminal() {
    return headlines(calendar, all).stream()
        .filter(l -> l.startsWith("Work: "))
        .map(l -> l.substring(6, l.indexOf(" on average")))
        .findFirst()
        .orElseThrow()
        .toLowerCase(Locale.ROOT);
  }

  static List<String> headlines(WorkCalendar calendar, Period period) {
    return new CalendarAnswer(calendar, period, LabelSheet.COMMON, Instant.EPOCH)
        .headlines()
        .lines();
  }
}

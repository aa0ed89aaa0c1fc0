package propcap.evidence.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import propcap.farm.Season;
import propcap.farm.StationRecord;
import propcap.farm.WeatherRecord.Day;

/** Fills a station's short gaps, each by a straight line from the day before to the day after. */
public final class GapFilling {
  /** Common practice: weather turns within days, and a longer line would be no weather at all. */
  public static final int DEFAULT_MOST_DAYS = 3;

  private final int mostDays;
  private final List<Gap> filled = new ArrayList<>();
  private final List<Gap> left = new ArrayList<>();

  private GapFilling(int mostDays) {
    this.mostDays = mostDays;
  }

  /** What is missing in a gap. */
  public enum Missing {
    TMIN("tmin"),
    TMAX("tmax"),
    BOTH("tmin and tmax");

    private final String words;

    Missing(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Days in a row without a value, both ends included. */
  public record Gap(Missing missing, LocalDate from, LocalDate to) {
    public int days() {
      return new Season(from, to).days();
    }
  }

  /**
   * A record made whole as far as it can be.
   *
   * @param days those with both values, in order
   * @param filled gaps that were short enough
   * @param left gaps that were not: their days are not in the record
   */
  public record Filled(List<Day> days, List<Gap> filled, List<Gap> left) {}

  /**
   * Fills gaps.
   *
   * @param mostDays longer gaps are left; 0 fills none
   */
  public static Filled fill(StationRecord record, int mostDays) {
    Optional<Season> span = record.span();
    if (span.isEmpty()) {
      return new Filled(List.of(), List.of(), List.of());
    }
    return new GapFilling(mostDays).filled(record, span.get());
  }

  private Filled filled(StationRecord record, Season span) {
    Map<LocalDate, Double> minC = whole(record.minC(), Missing.TMIN, span);
    Map<LocalDate, Double> maxC = whole(record.maxC(), Missing.TMAX, span);
    List<Day> days = new ArrayList<>();
    for (int d = 0; d < span.days(); d++) {
      LocalDate date = span.date(d);
      Double min = minC.get(date);
      Double max = maxC.get(date);
      if (min != null && max != null) {
        days.add(day(date, min, max, record.minC().containsKey(date)));
      }
    }
    return new Filled(List.copyOf(days), together(filled), together(left));
  }

  /** A line may cross the value that was measured on that day, which then stands for both. */
  private static Day day(LocalDate date, double min, double max, boolean minMeasured) {
    return minMeasured
        ? new Day(date, min, Math.max(min, max))
        : new Day(date, Math.min(min, max), max);
  }

  private Map<LocalDate, Double> whole(
      NavigableMap<LocalDate, Double> values, Missing missing, Season span) {
    Map<LocalDate, Double> whole = new TreeMap<>(values);
    LocalDate before = span.start().minusDays(1);
    for (LocalDate next : values.keySet()) {
      gap(missing, before, next).ifPresent(g -> sort(g, values, whole));
      before = next;
    }
    gap(missing, before, span.end().plusDays(1)).ifPresent(left::add);
    return whole;
  }

  private static Optional<Gap> gap(Missing missing, LocalDate before, LocalDate after) {
    return before.plusDays(1).isBefore(after)
        ? Optional.of(new Gap(missing, before.plusDays(1), after.minusDays(1)))
        : Optional.empty();
  }

  private void sort(Gap gap, NavigableMap<LocalDate, Double> values, Map<LocalDate, Double> whole) {
    Double before = values.get(gap.from().minusDays(1));
    Double after = values.get(gap.to().plusDays(1));
    if (before == null || after == null || gap.days() > mostDays) {
      left.add(gap);
      return;
    }
    filled.add(gap);
    for (int d = 0; d < gap.days(); d++) {
      double share = (d + 1.0) / (gap.days() + 1);
      whole.put(gap.from().plusDays(d), before + share * (after - before));
    }
  }

  /** In order of time, those of both values as one. */
  private static List<Gap> together(List<Gap> gaps) {
    Map<Season, Gap> bySpan =
        new TreeMap<>(Comparator.comparing(Season::start).thenComparing(Season::end));
    for (Gap gap : gaps) {
      bySpan.merge(
          new Season(gap.from(), gap.to()), gap, (a, b) -> new Gap(Missing.BOTH, a.from(), a.to()));
    }
    return List.copyOf(bySpan.values());
  }
}

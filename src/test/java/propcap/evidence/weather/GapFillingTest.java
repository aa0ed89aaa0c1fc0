package propcap.evidence.weather;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import propcap.evidence.weather.GapFilling.Filled;
import propcap.evidence.weather.GapFilling.Gap;
import propcap.evidence.weather.GapFilling.Missing;
import propcap.farm.StationRecord;
import propcap.farm.WeatherRecord.Day;

/** Gaps filled by hand. */
class GapFillingTest {
  private static final Double NONE = Double.NaN;

  private static LocalDate day(int dayOfApril) {
    return LocalDate.of(2003, 4, dayOfApril);
  }

  /** Days of April from the first on, NaN where nothing was written down. */
  private static StationRecord station(double[] minC, double[] maxC) {
    TreeMap<LocalDate, Double> min = new TreeMap<>();
    TreeMap<LocalDate, Double> max = new TreeMap<>();
    for (int d = 0; d < minC.length; d++) {
      if (!Double.isNaN(minC[d])) {
        min.put(day(d + 1), minC[d]);
      }
      if (!Double.isNaN(maxC[d])) {
        max.put(day(d + 1), maxC[d]);
      }
    }
    return new StationRecord("", min, max);
  }

  @Test
  void aGapOfTwoDaysIsFilledByStraightLines() {
    Filled filled =
        GapFilling.fill(
            station(new double[] {1, NONE, NONE, 4}, new double[] {10, NONE, NONE, 16}), 3);
    assertThat(filled.days())
        .containsExactly(
            new Day(day(1), 1, 10),
            new Day(day(2), 2, 12),
            new Day(day(3), 3, 14),
            new Day(day(4), 4, 16));
    assertThat(filled.filled()).containsExactly(new Gap(Missing.BOTH, day(2), day(3)));
    assertThat(filled.left()).isEmpty();
  }

  @Test
  void aGapLongerThanAllowedIsLeft() {
    Filled filled =
        GapFilling.fill(
            station(new double[] {1, NONE, NONE, 4}, new double[] {10, NONE, NONE, 16}), 1);
    assertThat(filled.days()).extracting(Day::date).containsExactly(day(1), day(4));
    assertThat(filled.left()).containsExactly(new Gap(Missing.BOTH, day(2), day(3)));
  }

  @Test
  void aMissingMaximumIsFilledBesideAMeasuredMinimum() {
    Filled filled =
        GapFilling.fill(station(new double[] {1, 0, 2}, new double[] {10, NONE, 12}), 3);
    assertThat(filled.days().get(1)).isEqualTo(new Day(day(2), 0, 11));
    assertThat(filled.filled()).containsExactly(new Gap(Missing.TMAX, day(2), day(2)));
  }

  /** A cold day between mild ones: the line for its minimum, 5, lies above its maximum, 3. */
  @Test
  void aLineThatCrossesTheMeasuredValueStopsAtIt() {
    Filled filled = GapFilling.fill(station(new double[] {4, NONE, 6}, new double[] {9, 3, 9}), 3);
    assertThat(filled.days().get(1)).isEqualTo(new Day(day(2), 3, 3));
  }

  @Test
  void nothingIsMadeUpBeforeTheFirstValueOrAfterTheLast() {
    Filled filled =
        GapFilling.fill(station(new double[] {NONE, 1, 2}, new double[] {9, 9, NONE}), 3);
    assertThat(filled.days()).containsExactly(new Day(day(2), 1, 9));
    assertThat(filled.left())
        .containsExactly(
            new Gap(Missing.TMIN, day(1), day(1)), new Gap(Missing.TMAX, day(3), day(3)));
  }

  @Test
  void nothingComesOfNothing() {
    Filled filled = GapFilling.fill(station(new double[0], new double[0]), 3);
    Assertions.assertThat(filled).isEqualTo(new Filled(List.of(), List.of(), List.of()));
  }
}

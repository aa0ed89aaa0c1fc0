package propcap.study.statistics;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** One whole number a season, in the seasons' order, in no more bytes than the numbers take. */
public final class Column {
  private static final short[] NO_SHORTS = {};
  private static final int[] NO_INTS = {};

  private int size;

  /** What all of them are, as long as they are alike and neither array is begun. */
  private int alike;

  private short[] shorts = NO_SHORTS;
  private int[] ints = NO_INTS;

  public void add(int number) {
    if (size == 0) {
      alike = number;
    }
    if (isAlike() && number != alike) {
      spread();
    }
    if (shorts != NO_SHORTS && (short) number != number) {
      widen();
    }
    if (shorts != NO_SHORTS) {
      shorts = size < shorts.length ? shorts : Arrays.copyOf(shorts, longer(size));
      shorts[size] = (short) number;
    } else if (ints != NO_INTS) {
      ints = size < ints.length ? ints : Arrays.copyOf(ints, longer(size));
      ints[size] = number;
    }
    size++;
  }

  /** Little is left empty: of 100,000 springs there are hundreds of columns. */
  private static int longer(int size) {
    return size + Math.max(16, size / 8);
  }

  private boolean isAlike() {
    return shorts == NO_SHORTS && ints == NO_INTS;
  }

  /** Writes out those that were alike. */
  private void spread() {
    int room = longer(size);
    if ((short) alike == alike) {
      shorts = new short[room];
      Arrays.fill(shorts, 0, size, (short) alike);
    } else {
      ints = new int[room];
      Arrays.fill(ints, 0, size, alike);
    }
  }

  private void widen() {
    ints = new int[shorts.length];
    for (int i = 0; i < size; i++) {
      ints[i] = shorts[i];
    }
    shorts = NO_SHORTS;
  }

  public int size() {
    return size;
  }

  public int get(int season) {
    return isAlike() ? alike : shorts != NO_SHORTS ? shorts[season] : ints[season];
  }

  public double[] numbers() {
    double[] numbers = new double[size];
    for (int i = 0; i < size; i++) {
      numbers[i] = get(i);
    }
    return numbers;
  }

  /** What is said of each column, in their order. */
  public static <K> Map<K, Stat> stats(Map<K, Column> columns, Strata strata) {
    Map<K, Stat> stats = new LinkedHashMap<>();
    columns.forEach((kind, column) -> stats.put(kind, column.stat(strata)));
    return stats;
  }

  public Stat stat(Strata strata) {
    return Stat.of(numbers(), strata);
  }

  /** What it takes in memory, bytes. */
  long bytes() {
    return 64 + (long) Short.BYTES * shorts.length + (long) Integer.BYTES * ints.length;
  }

  /** What each season more takes, bytes, with what may yet cease to be alike. */
  public long bytesASeason() {
    return ints != NO_INTS ? Integer.BYTES : Short.BYTES;
  }
}

package propcap.study.statistics;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;

/** One of something for each of a kind, in the order of the kinds. */
public final class ByKind {
  private ByKind() {}

  public static <K extends Enum<K>, V> Map<K, V> of(Class<K> kinds, Function<K, V> value) {
    Map<K, V> each = new EnumMap<>(kinds);
    for (K kind : kinds.getEnumConstants()) {
      each.put(kind, value.apply(kind));
    }
    return each;
  }
}

package propcap.chance;

import java.lang.ref.SoftReference;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Laws that were worked out before, by what they hang on, so that scenarios that differ in other
 * things share them. The oldest go first, and all of them where memory is short; what is gone is
 * worked out anew and comes out the same.
 */
final class Made<K, V> {
  private final Map<K, SoftReference<V>> made;

  Made(int most) {
    made =
        Collections.synchronizedMap(
            new LinkedHashMap<>(16, 0.75f, true) {
              @Override
              protected boolean removeEldestEntry(Map.Entry<K, SoftReference<V>> eldest) {
                return size() > most;
              }
            });
  }

  /** What was made of a key, or is made of it now: not while others wait. */
  V of(K key, Function<K, V> maker) {
    SoftReference<V> before = made.get(key);
    V known = before == null ? null : before.get();
    if (known != null) {
      return known;
    }
    V fresh = maker.apply(key);
    made.put(key, new SoftReference<>(fresh));
    return fresh;
  }
}

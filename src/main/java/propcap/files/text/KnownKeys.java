package propcap.files.text;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The keys of a map that mean something where the map stands. */
public final class KnownKeys {
  private KnownKeys() {}

  /**
   * Reports the keys that are not known and leaves them out. A known key that is missing and was
   * nearly written counts as unread, so that it is not reported a second time as missing.
   */
  public static Node.Keyed of(Node.Keyed map, List<String> known, Faults faults) {
    if (known.containsAll(map.entries().keySet())) {
      return map;
    }
    Map<String, Node.Entry> kept = new LinkedHashMap<>(map.entries());
    kept.keySet().retainAll(known);
    map.entries()
        .forEach(
            (key, entry) -> {
              FilePosition spot = entry.spot();
              if (!known.contains(key) && !faults.isFull(spot.file())) {
                faults.add(
                    spot, "unknown key " + FaultWords.shown(key), FaultWords.oneOf(key, known));
                Node.Entry unread = new Node.Entry(spot, new Node.Unread(spot));
                FaultWords.nearest(key, known).ifPresent(meant -> kept.putIfAbsent(meant, unread));
              }
            });
    return new Node.Keyed(map.spot(), kept, map.open());
  }
}

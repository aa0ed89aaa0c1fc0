package propcap.study.sweep;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.lang.reflect.RecordComponent;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.WeatherYear;
import propcap.study.RunSettings;

/**
 * By what the numbers of a scenario's seasons are known again: a SHA-256 of all that they hang on.
 * The scenario's name is no part of it, nor how many threads shared the work.
 */
final class RunKey {
  private final StringBuilder text = new StringBuilder();

  private RunKey() {}

  /** The key, in hexadecimal digits. */
  static String of(Scenario scenario, RunSettings settings, String version) {
    RunKey key = new RunKey();
    key.add(version);
    key.add(settings.seed());
    key.add(settings.seasons());
    key.add(scenario.named(""));
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(key.text.toString().getBytes(UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private void add(@Nullable Object part) {
    if (part instanceof Record record) {
      addRecord(record);
    } else if (part instanceof WeatherYear year) {
      add(year.year());
      for (int day = 0; day < year.days(); day++) {
        add(year.minC(day));
        add(year.meanC(day));
      }
    } else if (part instanceof List<?> list) {
      add(list.size());
      list.forEach(this::add);
    } else if (part instanceof Set<?> set) {
      add(set.stream().map(String::valueOf).sorted().toList());
    } else if (part instanceof Map<?, ?> map) {
      List<Object> sorted = new ArrayList<>();
      map.entrySet().stream()
          .sorted((a, b) -> String.valueOf(a.getKey()).compareTo(String.valueOf(b.getKey())))
          .forEach(entry -> sorted.addAll(List.of(entry.getKey(), entry.getValue())));
      add(sorted);
    } else {
      // With its length, so that no two different rows of parts read alike.
      String word = String.valueOf(part);
      text.append(word.length()).append(':').append(word).append(' ');
    }
  }

  private void addRecord(Record record) {
    add(record.getClass().getSimpleName());
    for (RecordComponent component : record.getClass().getRecordComponents()) {
      try {
        add(component.getAccessor().invoke(record));
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(component + " cannot be read", e);
      }
    }
  }
}

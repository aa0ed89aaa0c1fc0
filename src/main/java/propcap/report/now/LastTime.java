package propcap.report.now;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was answered when it was asked before.
 *
 * @param today the day on which
 * @param chances by sowing
 */
public record LastTime(LocalDate today, Map<String, Double> chances) {
  public LastTime {
    chances = Map.copyOf(chances);
  }

  /** From the file that was written then; empty where it can't be read. */
  public static Optional<LastTime> of(String json) {
    try {
      JsonObject file = JsonParser.parseString(json).getAsJsonObject();
      Map<String, Double> chances = new HashMap<>();
      for (JsonElement each : file.getAsJsonArray("sowings")) {
        JsonObject sowing = each.getAsJsonObject();
        chances.put(sowing.get("sowing").getAsString(), sowing.get("chanceNow").getAsDouble());
      }
      return Optional.of(new LastTime(LocalDate.parse(file.get("today").getAsString()), chances));
    } catch (JsonParseException
        | DateTimeException
        | IllegalStateException
        | NullPointerException
        | UnsupportedOperationException
        | NumberFormatException e) {
      return Optional.empty();
    }
  }
}

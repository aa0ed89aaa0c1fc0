package propcap.report;

import com.google.gson.JsonElement;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.Step;
import propcap.study.Forecast;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Stat;

/**
 * The forecast for other programs, every number in full precision. It holds nothing of how the work
 * was shared out, so that the same scenario and seed give the same bytes.
 */
final class SummaryJson {
  private final JsonWriter json;

  private SummaryJson(Writer out) {
    json = new JsonWriter(out);
    json.setIndent("  ");
  }

  /** Refuses a number that is not finite, with an {@link IllegalArgumentException}. */
  static String of(Forecast forecast, String version) throws IOException {
    StringWriter out = new StringWriter();
    new SummaryJson(out).forecast(forecast, version);
    return out.append('\n').toString();
  }

  /** Whether a folder holds a summary that this class wrote. */
  static boolean isIn(Path folder) {
    Path file = folder.resolve(Results.SUMMARY);
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (Reader in = Files.newBufferedReader(file)) {
      JsonElement summary = JsonParser.parseReader(in);
      return summary.isJsonObject()
          && summary
              .getAsJsonObject()
              .keySet()
              .containsAll(List.of("scenario", "sowings", "waiting"));
    } catch (IOException | JsonParseException e) {
      return false;
    }
  }

  private void forecast(Forecast forecast, String version) throws IOException {
    json.beginObject();
    json.name("scenario").value(forecast.scenario().name());
    json.name("version").value(version);
    json.name("seasons").value(forecast.seasons());
    json.name("seed").value(forecast.settings().seed());
    json.name("trays").value(forecast.scenario().trays());
    json.name("release").beginObject();
    for (String crop : Plan.crops(forecast)) {
      date(crop, forecast.release().get(crop));
    }
    json.endObject();
    json.name("total").beginObject();
    stat("onTime", forecast.onTime());
    stat("late", forecast.late());
    stat("cellsSown", forecast.cellsSown());
    json.endObject();
    json.name("sowings").beginArray();
    for (SowingForecast sowing : forecast.sowings()) {
      sowing(sowing);
    }
    json.endArray();
    json.name("losses").beginObject();
    for (Loss loss : Loss.values()) {
      stat(loss.word(), Plan.present(forecast.losses(), loss));
    }
    json.endObject();
    json.name("places").beginArray();
    for (Occupancy place : forecast.places()) {
      place(place);
    }
    json.endArray();
    waiting(forecast.waiting());
    json.endObject();
  }

  private void sowing(SowingForecast forecast) throws IOException {
    json.beginObject();
    json.name("id").value(forecast.sowing().id());
    json.name("crop").value(forecast.sowing().crop());
    json.name("trays").value(forecast.sowing().trays());
    json.name("needed").value(forecast.sowing().plantsNeeded());
    stat("onTime", forecast.onTime());
    stat("late", forecast.late());
    json.name("chanceMet").value(forecast.chanceMet());
    json.name("chanceMetLow").value(forecast.chanceMetLow());
    json.name("chanceMetHigh").value(forecast.chanceMetHigh());
    date("firstOut", forecast.firstOut());
    date("medianOut", forecast.medianOut());
    date("lastOut", forecast.lastOut());
    json.endObject();
  }

  private void place(Occupancy place) throws IOException {
    json.beginObject();
    json.name("name").value(place.name());
    json.name("kind").value(place.kind().word());
    json.name("spaces").value(place.spaces());
    json.name("meanUse").value(place.meanUse());
    stat("peak", place.peak());
    stat("fullDays", place.fullDays());
    json.endObject();
  }

  private void waiting(Map<Step, Stat> waiting) throws IOException {
    json.name("waiting").beginObject();
    for (Step step : Step.values()) {
      stat(step.word(), Plan.present(waiting, step));
    }
    json.endObject();
  }

  private void stat(String name, Stat stat) throws IOException {
    json.name(name).beginObject();
    json.name("mean").value(stat.mean());
    json.name("se").value(stat.se());
    json.name("p10").value(stat.p10());
    json.name("p50").value(stat.p50());
    json.name("p90").value(stat.p90());
    json.endObject();
  }

  private void date(String name, @Nullable LocalDate date) throws IOException {
    json.name(name).value(date == null ? null : date.toString());
  }
}

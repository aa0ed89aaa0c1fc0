package propcap.report.kit;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import com.google.gson.JsonSerializer;
import com.google.gson.TypeAdapter;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Optional;
import propcap.evidence.Estimate;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * A file for other programs, from records: their components are its members, in their order. Every
 * number is in full precision, an enum its word; what there is not is null, and an empty Optional
 * is left out. A number that is not finite is refused with an {@link IllegalArgumentException}.
 */
public final class Json {
  private static final JsonSerializer<Double> FINITE =
      (number, type, context) -> new JsonPrimitive(Words.finite(number));

  private static final Gson GSON =
      new GsonBuilder()
          .setPrettyPrinting()
          .serializeNulls()
          .disableHtmlEscaping()
          .enableComplexMapKeySerialization()
          .registerTypeAdapter(double.class, FINITE)
          .registerTypeAdapter(Double.class, FINITE)
          .registerTypeAdapter(Stat.class, as(Table.STAT))
          .registerTypeAdapter(Difference.class, as(Table.DIFFERENCE))
          .registerTypeAdapter(Estimate.class, as(Table.ESTIMATE))
          .registerTypeAdapter(
              LocalDate.class,
              (JsonSerializer<LocalDate>) (d, type, context) -> new JsonPrimitive(d.toString()))
          .registerTypeHierarchyAdapter(
              Enum.class,
              (JsonSerializer<Enum<?>>) (e, type, context) -> new JsonPrimitive(Csv.word(e)))
          .registerTypeHierarchyAdapter(Optional.class, new LeftOut())
          .create();

  private Json() {}

  private static <T> JsonSerializer<T> as(Table<T> table) {
    return (row, type, context) -> context.serialize(table.object(row));
  }

  /** The file, with a line's end after it: the members of all its parts, one after another. */
  public static String text(Object... parts) {
    JsonObject file = new JsonObject();
    for (Object part : parts) {
      JsonElement members = GSON.toJsonTree(part);
      members.getAsJsonObject().entrySet().forEach(m -> file.add(m.getKey(), m.getValue()));
    }
    return GSON.toJson(file) + "\n";
  }

  /** Writes nothing, not even the name, where there is nothing. */
  private static final class LeftOut extends TypeAdapter<Optional<?>> {
    @Override
    public void write(JsonWriter out, Optional<?> value) throws IOException {
      if (value.isPresent()) {
        GSON.toJson(value.get(), value.get().getClass(), out);
        return;
      }
      out.setSerializeNulls(false);
      out.nullValue();
      out.setSerializeNulls(true);
    }

    @Override
    public Optional<?> read(JsonReader in) {
      throw new UnsupportedOperationException("results are only written");
    }
  }
}

package propcap.report.kit;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.study.Difference;
import propcap.study.MeanLimits;
import propcap.study.Stat;

/**
 * An object of a file for other programs, member by member in the order in which they are put;
 * every number in full precision, what there is not as null. A number that is not finite is refused
 * with an {@link IllegalArgumentException}.
 */
public final class PutJson {
  private static final Gson GSON =
      new GsonBuilder().setPrettyPrinting().serializeNulls().disableHtmlEscaping().create();

  private final JsonObject members = new JsonObject();

  public PutJson put(String name, @Nullable String text) {
    members.addProperty(name, text);
    return this;
  }

  public PutJson put(String name, boolean is) {
    members.addProperty(name, is);
    return this;
  }

  public PutJson put(String name, long number) {
    members.addProperty(name, number);
    return this;
  }

  public PutJson put(String name, double number) {
    members.addProperty(name, Words.finite(number));
    return this;
  }

  public PutJson put(String name, @Nullable Double number) {
    members.addProperty(name, number == null ? null : Double.valueOf(Words.finite(number)));
    return this;
  }

  /** An amount of money, exact. */
  public PutJson put(String name, BigDecimal amount) {
    members.addProperty(name, amount);
    return this;
  }

  public PutJson put(String name, @Nullable LocalDate date) {
    members.addProperty(name, date == null ? null : date.toString());
    return this;
  }

  public PutJson put(String name, @Nullable Stat stat) {
    return put(name, stat == null ? null : of(stat));
  }

  public PutJson put(String name, @Nullable Difference difference) {
    return put(name, difference == null ? null : of(difference));
  }

  public PutJson put(String name, @Nullable PutJson object) {
    members.add(name, object == null ? null : object.members);
    return this;
  }

  public PutJson put(String name, JsonArray list) {
    members.add(name, list);
    return this;
  }

  /** A list with an object for each thing. */
  public static <T> JsonArray each(List<T> things, Function<T, PutJson> object) {
    JsonArray list = new JsonArray();
    things.forEach(thing -> list.add(object.apply(thing).members));
    return list;
  }

  public static JsonArray texts(List<String> texts) {
    JsonArray list = new JsonArray();
    texts.forEach(list::add);
    return list;
  }

  public static JsonArray wholes(List<Integer> numbers) {
    JsonArray list = new JsonArray();
    numbers.forEach(list::add);
    return list;
  }

  /** What was seen too seldom for limits has no standard error either. */
  public static PutJson of(Stat stat) {
    MeanLimits limits = stat.limits();
    return new PutJson()
        .put("mean", stat.mean())
        .put("se", limits == null ? null : Double.valueOf(stat.se()))
        .put("low", limits == null ? null : Double.valueOf(limits.low()))
        .put("high", limits == null ? null : Double.valueOf(limits.high()))
        .put("unlike", stat.unlike())
        .put("p10", stat.p10())
        .put("p50", stat.p50())
        .put("p90", stat.p90());
  }

  /** A difference that is the same in all seasons has no error that could be told. */
  public static PutJson of(Difference difference) {
    boolean isAlways = difference.narrowing() == null;
    return new PutJson()
        .put("mean", difference.mean())
        .put("halfWidth", isAlways ? null : Double.valueOf(difference.halfWidth()))
        .put("se", isAlways ? null : Double.valueOf(difference.se()))
        .put("shareAhead", difference.shareAhead())
        .put("narrowing", difference.narrowing())
        .put("differing", difference.differing());
  }

  /** The file, with a line's end after it. */
  public String text() {
    return GSON.toJson(members) + "\n";
  }
}

package propcap.web.request;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a request asks, read with care: nothing that it holds can be anything but plain text. */
public record RequestFields(JsonObject json) {
  private static final int LONGEST = 2_000;

  private static final Pattern PERCENT =
      Pattern.compile("\\s*([0-9]{1,3}(?:\\.[0-9]{1,6})?)\\s*%?\\s*");

  public static RequestFields of(String body) throws RefusedException {
    try {
      JsonElement json = JsonParser.parseString(body);
      if (json.isJsonObject()) {
        return new RequestFields(json.getAsJsonObject());
      }
    } catch (JsonParseException | StackOverflowError e) {
      // Refused below, as anything that is no object.
    }
    throw RefusedException.bad("the request is no JSON object");
  }

  /** A text; empty where there is none. */
  public String text(String key) throws RefusedException {
    return json.has(key) ? text(key, json.get(key)) : "";
  }

  /** A text of many lines, such as a whole file. */
  public String longText(String key) throws RefusedException {
    if (json.get(key) instanceof JsonPrimitive text && text.getAsString().indexOf('\0') < 0) {
      return text.getAsString();
    }
    throw RefusedException.field(key, "must be a text");
  }

  private static String text(String key, JsonElement value) throws RefusedException {
    if (value instanceof JsonPrimitive primitive) {
      String text = primitive.getAsString();
      if (text.length() <= LONGEST && text.chars().noneMatch(Character::isISOControl)) {
        return text;
      }
    }
    throw RefusedException.field(key, "must be a text of one line");
  }

  public boolean isTrue(String key) throws RefusedException {
    return text(key).equals("true");
  }

  public long number(String key) throws RefusedException {
    String text = text(key);
    try {
      return Long.parseLong(text.strip());
    } catch (NumberFormatException e) {
      throw RefusedException.field(key, "must be a whole number" + was(text));
    }
  }

  /** What stands there in place of what must. */
  public static String was(String text) {
    return text.isBlank() ? "; it is empty" : ", was '" + text + "'";
  }

  /**
   * A percentage above 0, with its sign or without it, as a share.
   *
   * @param isBelowAll whether 100 % is too much
   */
  public double share(String key, boolean isBelowAll) throws RefusedException {
    Matcher percent = PERCENT.matcher(text(key));
    double share = percent.matches() ? Double.parseDouble(percent.group(1)) / 100 : 0;
    if (share > 0 && (isBelowAll ? share < 1 : share <= 1)) {
      return share;
    }
    throw RefusedException.field(
        key, "must be above 0 and " + (isBelowAll ? "below" : "up to") + " 100 %" + was(text(key)));
  }

  /** A whole number in bounds. */
  public int number(String key, int least, int most) throws RefusedException {
    long number = number(key);
    if (number < least || number > most) {
      throw RefusedException.field(
          key, "must be from " + least + " to " + most + ", was " + number);
    }
    return (int) number;
  }

  /** Texts by key. */
  public Map<String, String> texts(String key) throws RefusedException {
    Map<String, String> texts = new LinkedHashMap<>();
    if (json.get(key) instanceof JsonObject map) {
      for (String each : map.keySet()) {
        texts.put(each, text(each, map.get(each)));
      }
      return texts;
    }
    throw RefusedException.field(key, "must be a map of texts");
  }

  /** Objects in a list. */
  public List<RequestFields> each(String key) throws RefusedException {
    List<RequestFields> all = new ArrayList<>();
    if (json.get(key) instanceof JsonArray list) {
      for (JsonElement each : list) {
        if (!(each instanceof JsonObject object)) {
          throw RefusedException.field(key, "must be a list of objects");
        }
        all.add(new RequestFields(object));
      }
      return all;
    }
    throw RefusedException.field(key, "must be a list");
  }
}

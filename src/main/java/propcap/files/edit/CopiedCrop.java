package propcap.files.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.CropNotes;

/**
 * An entry of a crop list copied into a grower's own: its lines with their comments, the grower's
 * places in the place of the list's, and its sources in the key at the head.
 */
final class CopiedCrop {
  private static final Pattern PLACES = Pattern.compile("germinate-in: \\[[^\\]]*\\]");
  private static final String HEADING = "# Where the numbers come from:";

  private final CropBook.Entry entry;
  private final List<String> newSources = new ArrayList<>();
  private final List<String> tags = new ArrayList<>();
  private final List<String> lines;

  private CopiedCrop(String list, CropBook.Entry entry, List<String> places) {
    this.entry = entry;
    this.lines = lines(new CropNotes(list).references(), places);
  }

  /**
   * A list's text with an entry more.
   *
   * @param places that the crop germinates in, best first; none: as the entry has it
   */
  static String into(String list, CropBook.Entry entry, List<String> places) {
    return new CopiedCrop(list, entry, places).into(list);
  }

  /** A tag that the list has for another source already gets a letter more. */
  private List<String> lines(Map<String, String> known, List<String> places) {
    String text = String.join("\n", entry.text());
    for (CropBook.Source source : entry.sources()) {
      String tag = source.tag();
      while (known.containsKey(tag) && !source.reference().equals(known.get(tag))) {
        tag += "X";
      }
      tags.add("[" + tag + "]");
      text = text.replace("[" + source.tag() + "]", "[" + tag + "]");
      if (!known.containsKey(tag)) {
        newSources.addAll(StarterCrops.wrapped(new CropBook.Source(tag, source.reference())));
      }
    }
    if (!places.isEmpty()) {
      String own = Matcher.quoteReplacement("germinate-in: " + YamlWords.flow(places));
      text = PLACES.matcher(text).replaceFirst(own);
    }
    return text.lines().toList();
  }

  private String into(String list) {
    Optional<String> inLines = YamlItems.withLines(list, "crops", lines);
    if (inLines.isEmpty()) {
      // No comment can stand beside a number in braces: the key says which sources the crop has.
      newSources.add("#   " + entry.crop().name() + ": " + String.join(" ", tags));
    }
    return withSources(inLines.orElseGet(() -> inBraces(list)));
  }

  private String inBraces(String list) {
    LoadSettings words = LoadSettings.builder().setSchema(new FailsafeSchema()).build();
    String name = entry.crop().name();
    Map<?, ?> crop = (Map<?, ?>) new Load(words).loadFromString(String.join("\n", lines));
    return YamlText.set(list, List.of(Step.to("crops"), Step.to(name)), value(crop, name));
  }

  private static Object value(Map<?, ?> crop, String name) {
    Object value = crop.get(name);
    if (value == null) {
      throw new IllegalStateException("the entry of " + name + " names another crop");
    }
    return value;
  }

  /** Below the sources that are there, or above all that is no comment. */
  private String withSources(String list) {
    if (newSources.isEmpty()) {
      return list;
    }
    String newLine = new YamlSpans(list).newLine();
    String start = list.startsWith("\uFEFF") ? "\uFEFF" : "";
    List<String> all = new ArrayList<>(List.of(list.substring(start.length()).split("\\R", -1)));
    int keyEnd = new CropNotes(list.substring(start.length())).keyEnd();
    List<String> more = new ArrayList<>(newSources);
    if (keyEnd == 0) {
      more.add(0, HEADING);
      while (all.get(keyEnd).isBlank() || all.get(keyEnd).strip().startsWith("#")) {
        keyEnd++;
      }
    }
    all.addAll(keyEnd, more);
    return start + String.join(newLine, all);
  }
}

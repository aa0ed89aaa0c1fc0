package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.evidence.Stages;

/** What a log of trays says: a page, files, the lines for the crop list, and a terminal's few. */
public final class StagesAnswer {
  /** Crops of which a terminal shows more than how long they take. */
  private static final int FEW = 2;

  private StagesAnswer() {}

  /**
   * Writes the page, first, and the files beside it.
   *
   * @throws IllegalArgumentException where a number is not finite
   */
  public static List<Path> write(Stages stages, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("stages.html", StagesPage.of(stages, version).html());
    files.put(KnownResults.STAGES.file(), StagesFiles.json(stages, version));
    files.put("stages.csv", StagesFiles.csv(stages));
    files.put("stage-trays.csv", StagesFiles.traysCsv(stages));
    files.put("stages.yaml", String.join("\n", entry(stages)) + "\n");
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Stages stages) {
    Lines lines = new Lines();
    List<StagesWords> crops = StagesWords.of(stages);
    for (StagesWords words : crops) {
      lines.add(words.verdict());
      if (crops.size() <= FEW) {
        lines.add(words.losses());
      }
      if (crops.size() == 1) {
        lines.add(words.outbreaks());
        lines.add(words.holding());
        words.use().forEach(lines::add);
      }
    }
    crops.forEach(words -> words.warnings().forEach(lines::add));
    String use = StagesUse.shortly(stages) + "; ";
    String weight = "the crop list weighs " + Words.plural(stages.listedTrays(), "tray") + "; ";
    String brackets = "in brackets 95 % intervals";
    boolean hasRoom = (use + weight + brackets).length() <= Headlines.COLUMNS;
    return lines.endingWith(use + (hasRoom ? weight : "") + brackets);
  }

  /** What trays tell, by crop, then by key of the crop list, then by key within it. */
  public static Map<String, Map<String, Map<String, String>>> values(Stages stages) {
    Map<String, Map<String, Map<String, String>>> values = new LinkedHashMap<>();
    stages.crops().forEach(c -> values.put(c.crop().name(), StagesEntry.values(c)));
    values.values().removeIf(Map::isEmpty);
    return values;
  }

  /** What was learned as a crop list has it. */
  public static List<String> entry(Stages stages) {
    return StagesEntry.lines(stages);
  }
}

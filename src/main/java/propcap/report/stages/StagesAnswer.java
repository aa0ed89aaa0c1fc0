package propcap.report.stages;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.evidence.stages.Stages;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;

/** What a log of trays says: a page, files, the lines for the crop list, and a terminal’s few. */
public record StagesAnswer(Stages stages) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "stages",
          "-stages",
          "stages.json",
          "scenario listedTrays crops",
          "stages.html stages.csv stage-trays.csv stages.yaml");

  /** Crops of which a terminal shows more than how long they take. */
  private static final int FEW = 2;

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
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
    boolean hasRoom = (use + weight + brackets).length() <= Lines.COLUMNS;
    return lines.endingWith(use + (hasRoom ? weight : "") + brackets);
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("stages.html", page(version).html());
    files.put(kind().file(), StagesTables.json(stages, version));
    files.put("stages.csv", StagesTables.csv(stages));
    files.put("stage-trays.csv", StagesTables.traysCsv(stages));
    files.put("stages.yaml", String.join("\n", entry()) + "\n");
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return StagesPage.of(stages, version);
  }

  /** What trays tell, by crop, then by key of the crop list, then by key within it. */
  public Map<String, Map<String, Map<String, String>>> values() {
    Map<String, Map<String, Map<String, String>>> values = new LinkedHashMap<>();
    stages.crops().forEach(c -> values.put(c.crop().name(), StagesEntry.values(c)));
    values.values().removeIf(Map::isEmpty);
    return values;
  }

  /** What was learned as a crop list has it. */
  public List<String> entry() {
    return StagesEntry.lines(stages);
  }
}

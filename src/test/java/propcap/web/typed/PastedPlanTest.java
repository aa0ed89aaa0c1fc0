package propcap.web.typed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Season;
import propcap.web.typed.PastedDates.Order;
import propcap.web.typed.PastedPlan.Manner;

/** Tables that were copied in a spreadsheet, some of them as bad as they come. */
class PastedPlanTest {
  private static final Set<String> HAS = new HashSet<>(PastedHeading.COLUMNS);
  private static final Season SPRING =
      new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));
  private static final Manner MANNER = new Manner("id", HAS, List.of(), Optional.empty(), SPRING);

  private static PastedPlan read(String text) {
    return PastedPlan.of(text, MANNER);
  }

  private static Map<String, String> first(String text) {
    return read(text).rows().get(0);
  }

  @Test
  void columnsComeInAnyOrder() {
    PastedPlan plan = read("Trays\tCROP\t Sow  Date \tSowing\n12\tcabbage\t1 Mar\tc-1\n");
    assertThat(plan.isHeaded()).isTrue();
    assertThat(plan.rows())
        .containsExactly(
            Map.of("trays", "12", "crop", "cabbage", "sow", "2027-03-01", "id", "c-1"));
    assertThat(plan.leftOut()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "id\tcrop\tlot\tsow\ttrays\tplants-needed\tbed-from\tbed-by\tbed-until\tresow-until",
        "ID\tVariety\tSeed lot\tSowing date\tFlats\tPlants needed\tBed from\tBed by\tBed until\tSow again until",
        "Batch\tCultivar\tLot no.\tDate sown\t# trays\tPlants required\tPlant from\tPlant by\tPlant until\tRe-sow until",
        "sowing_no\tCrop\tLot number\tSeeding date\tNo. of trays\tTransplants\tBed ready\tTransplant by\tTransplant until\tRESOW UNTIL",
      })
  void commonWordsAreKnown(String heading) {
    String row =
        "\nc-1\tcabbage\tA\t2027-03-01\t12\t900\t2027-04-15\t2027-05-01\t2027-06-01\t2027-03-20";
    PastedPlan plan = read(heading + row);
    assertThat(plan.columns()).containsExactlyElementsOf(PastedHeading.COLUMNS);
    assertThat(plan.rows()).hasSize(1);
    assertThat(plan.leftOut()).isEmpty();
  }

  /** What the page shows as headings can be pasted back. */
  @Test
  void thePagesOwnHeadingsAreKnown() throws IOException {
    String page = Files.readString(Path.of("src/main/resources/propcap/web/sowings.js"));
    String columns = page.substring(page.indexOf("const COLUMNS"));
    Matcher heading =
        Pattern.compile("\\['([a-z-]+)', '([^']+)'")
            .matcher(columns.substring(0, columns.indexOf("];")));
    int found = 0;
    while (heading.find()) {
      if (HAS.contains(heading.group(1))) {
        assertThat(PastedHeading.columns(List.of(heading.group(2)), HAS))
            .containsExactly(heading.group(1));
        found++;
      }
    }
    assertThat(found).isEqualTo(HAS.size());
  }

  @Test
  void withoutAHeadingTheyAreThePagesInTheirOrder() {
    PastedPlan plan = read("c-1\tcabbage\t\t1.3.2027\t12\t1.250\t\t\t\t\t\n");
    assertThat(plan.isHeaded()).isFalse();
    assertThat(plan.rows().get(0))
        .containsEntry("id", "c-1")
        .containsEntry("lot", "")
        .containsEntry("sow", "2027-03-01")
        .containsEntry("trays", "12")
        .containsEntry("plants-needed", "1250");
  }

  @Test
  void whatIsPastedInAFieldGoesOnFromThere() {
    PastedPlan plan =
        PastedPlan.of(
            "12\t900\n13\t950", new Manner("trays", HAS, List.of(), Optional.empty(), null));
    assertThat(plan.rows())
        .containsExactly(
            Map.of("trays", "12", "plants-needed", "900"),
            Map.of("trays", "13", "plants-needed", "950"));
  }

  @Test
  void unknownColumnsAreNamedAndLeftOut() {
    PastedPlan plan = read("Crop\tNotes\tTrays\t\tGoal\tEmpty\ncabbage\tnice\t12\tx\t90 %\t\n");
    assertThat(plan.rows()).containsExactly(Map.of("crop", "cabbage", "trays", "12"));
    assertThat(plan.leftOut())
        .containsExactly("column “Notes”", "column 4", "column “Goal”", "column “Empty”");
  }

  @Test
  void aColumnThatThePlanHasMoreIsTaken() {
    HashSet<String> more = new HashSet<>(HAS);
    more.add("goal");
    PastedPlan plan =
        PastedPlan.of(
            "Crop\tGoal\nx\t92,5 %", new Manner("id", more, List.of(), Optional.empty(), null));
    assertThat(plan.rows()).containsExactly(Map.of("crop", "x", "goal", "92.5 %"));
  }

  @Test
  void ofTwoColumnsThatMeanTheSameTheOneInThePagesWordsIsTaken() {
    for (String table :
        List.of(
            "Variety\tCrop\tTrays\nFilderkraut\tcabbage\t3\n",
            "Crop\tVariety\tTrays\ncabbage\tFilderkraut\t3\n")) {
      PastedPlan plan = read(table);
      assertThat(plan.rows()).containsExactly(Map.of("crop", "cabbage", "trays", "3"));
      assertThat(plan.leftOut()).containsExactly("column “Variety”");
    }
  }

  @Test
  void theGrowerCanSayWhatAColumnIs() {
    Manner said = new Manner("id", HAS, List.of("crop", "", "bed-by"), Optional.empty(), null);
    PastedPlan plan = PastedPlan.of("Crop\tNotes\tOut\nx\ty\t1.5.2027", said);
    assertThat(plan.rows()).containsExactly(Map.of("crop", "x", "bed-by", "2027-05-01"));
  }

  @Test
  void aTitleAboveTheHeadingsIsLeftOut() {
    PastedPlan plan = read("Sowings of spring\t\t\n\t\t\nCrop\tTrays\t\ncabbage\t12\t\n");
    assertThat(plan.rows()).containsExactly(Map.of("crop", "cabbage", "trays", "12"));
    assertThat(plan.leftOut())
        .containsExactly("what stands above the headings, “Sowings of spring”");
  }

  @Test
  void aRowOfTheTradesWordsIsNoHeading() {
    assertThat(read("batch\tcabbage\t\t2027-03-01\t3").isHeaded()).isFalse();
    assertThat(read("kale-1\tkale\t\t1.3.\t3\nbatch\tcabbage").isHeaded()).isFalse();
    assertThat(read("Trays\n12\n13").rows()).hasSize(2);
  }

  @Test
  void aColumnSettlesDayAndMonthForTheWholeTable() {
    assertThat(first("Crop\tSow on\tBed by\nx\t1/3/2027\t4/5/2027\nx\t15/3/2027\t5/5/2027"))
        .containsEntry("sow", "2027-03-01")
        .containsEntry("bed-by", "2027-05-04");
    assertThat(first("Crop\tSow on\nx\t3/1/2027\nx\t3/15/2027")).containsEntry("sow", "2027-03-01");
  }

  @Test
  void columnsThatEachSettleItCanDiffer() {
    assertThat(first("Crop\tSow on\tBed by\nx\t15/3/2027\t5/15/2027"))
        .containsEntry("sow", "2027-03-15")
        .containsEntry("bed-by", "2027-05-15");
  }

  @Test
  void whatNothingSettlesIsAskedAndTheAnswerHolds() {
    String table = "Crop\tSow on\tBed by\nx\t3/3/2027\t4/5/2027";
    assertThat(read(table).unclear()).contains("4/5/2027");
    Manner said = new Manner("id", HAS, List.of(), Optional.of(Order.MONTH_FIRST), SPRING);
    assertThat(PastedPlan.of(table, said).unclear()).isEmpty();
    assertThat(PastedPlan.of(table, said).rows().get(0)).containsEntry("bed-by", "2027-04-05");
    assertThat(read("Crop\tSow on\nx\t13/3/2027\nx\t3/14/2027\nx\t3/4/2027").unclear())
        .contains("3/4/2027");
  }

  @Test
  void emptyRowsAndColumnsAndOddSpacesAreNothing() {
    String nbsp = "\u00a0";
    PastedPlan plan =
        read(
            "\uFEFFCrop\tTrays"
                + nbsp
                + "\t\t\t\n\t\t\t\t\n "
                + nbsp
                + "\t\t\ncabbage"
                + nbsp
                + "\t1"
                + nbsp
                + "250\t\t\t\r\n\r\n\n");
    assertThat(plan.rows()).containsExactly(Map.of("crop", "cabbage", "trays", "1250"));
    assertThat(plan.leftOut()).isEmpty();
  }

  @Test
  void mergedCellsLeaveTheOthersEmpty() {
    assertThat(read("Crop\tSow on\tTrays\ncabbage\t1.3.\t12\n\t8.3.\t13").rows().get(1))
        .containsEntry("crop", "")
        .containsEntry("sow", "2027-03-08");
  }

  @Test
  void cellsOfSeveralLinesAndQuotesAreOne() {
    assertThat(first("Crop\tTrays\n\"early\ncabbage\"\t12")).containsEntry("crop", "early cabbage");
    assertThat(first("Crop\tTrays\n\"say \"\"early\"\"\"\t12"))
        .containsEntry("crop", "say \"early\"");
    assertThat(first("Crop\tTrays\n\"early\t12\nlate\t3")).containsEntry("crop", "\"early");
  }

  @Test
  void aCsvFileIsATableToo() {
    assertThat(read("crop;trays;sow on\ncabbage;12;1,5").rows().get(0))
        .containsEntry("trays", "12");
    assertThat(read("id,crop,trays\nc-1,\"cabbage, early\",12").rows().get(0))
        .containsEntry("crop", "cabbage, early");
    assertThat(read("cabbage, early").rows().get(0)).containsEntry("id", "cabbage, early");
  }

  @ParameterizedTest
  @ValueSource(strings = {"=A2+1", "#REF!", "#N/A", "#DIV/0!", "=cmd|' /C calc'!A0"})
  void aFormulaIsNoValue(String cell) {
    assertThat(PastedPlan.wrong(cell).orElse("")).startsWith("'" + cell + "' is no value");
    assertThat(first("Crop\tTrays\ncabbage\t" + cell)).containsEntry("trays", cell);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "\t\t\n\t", " ", "Crop\tTrays", "\"", "\uFEFF"})
  void nothingIsNoRow(String text) {
    assertThat(
            read(text).rows().stream()
                .flatMap(r -> r.values().stream())
                .filter(c -> !c.equals("\"")))
        .isEmpty();
  }

  @Test
  void thousandsOfRowsAreAllRead() {
    StringBuilder text = new StringBuilder("Sowing\tCrop\tSow on\tTrays\n");
    for (int i = 0; i < 5_000; i++) {
      text.append("c-").append(i).append("\tcabbage\t1/3/2027\t1,250\n");
    }
    text.append("last\tcabbage\t13/3/2027\t2\n");
    PastedPlan plan = read(text.toString());
    assertThat(plan.rows()).hasSize(5_001);
    assertThat(plan.rows().get(4_999))
        .containsEntry("sow", "2027-03-01")
        .containsEntry("trays", "1250");
  }
}

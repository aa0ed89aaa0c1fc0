package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;

/** What is written of an answer, and where. */
class AnswersTest {
  private Path folder;

  @BeforeEach
  void nameTheFolder(@TempDir Path desk) {
    folder = desk.resolve("out");
  }

  private static List<Path> writeAll(Path folder) throws IOException {
    return Stream.of(
            Put.in(folder, new ComparisonAnswer(Questions.comparison())),
            Put.in(folder, new BottlenecksAnswer(Questions.bottlenecks())),
            Put.in(folder, new SizingAnswer(Questions.sizing(), Questions.order())),
            Put.in(folder, new ShiftsAnswer(Questions.shifts(true))))
        .flatMap(List::stream)
        .toList();
  }

  private JsonObject json(String file) throws IOException {
    return JsonParser.parseString(Files.readString(folder.resolve(file))).getAsJsonObject();
  }

  private List<NamedCsvRecord> csv(String file) throws IOException {
    try (CsvReader<NamedCsvRecord> rows =
        CsvReader.builder().ofNamedCsvRecord(Files.readString(folder.resolve(file)))) {
      return rows.stream().toList();
    }
  }

  @Test
  void theFourAnswersLieBesideEachOtherInOneFolder() throws IOException {
    List<Path> written = writeAll(folder);
    assertThat(written).doesNotHaveDuplicates().allSatisfy(f -> assertThat(f).isNotEmptyFile());
    assertThat(written.get(0)).isEqualTo(folder.resolve("comparison.html"));
    assertThat(Put.contents(folder))
        .containsOnlyKeys(
            "comparison.html",
            "comparison.json",
            "comparison.csv",
            "comparison-money.csv",
            "bottleneck.html",
            "bottleneck.json",
            "bottleneck.csv",
            "bottleneck-steps.csv",
            "size.html",
            "size.json",
            "size.csv",
            "size-order.csv",
            "shift.html",
            "shift.json",
            "shift.csv");
  }

  @Test
  void theSameAnswersGiveTheSameBytes() throws IOException {
    writeAll(folder);
    Map<String, String> first = Put.contents(folder);
    writeAll(folder);
    assertThat(Put.contents(folder)).isEqualTo(first);
  }

  @Test
  void aForecastAndAnAnswerMayShareAFolder() throws IOException {
    Put.in(folder, new ForecastAnswer(Forecasts.spring()));
    Put.in(folder, new BottlenecksAnswer(Questions.noBottleneck()));
    Put.in(folder, new ForecastAnswer(Forecasts.bare()));
    assertThat(Put.contents(folder)).containsKeys("report.html", "bottleneck.html");
  }

  @Test
  void anAnswerOfAnotherKindMakesAFolderOurs() throws IOException {
    Put.in(folder, new ShiftsAnswer(Questions.unshifted()));
    Put.in(folder, new SizingAnswer(Questions.pairs(), Questions.NO_ORDER));
    assertThat(Put.contents(folder)).containsKeys("shift.json", "size.json");
  }

  @Test
  void aFileThatOnlyHasTheNameOfOursDoesNot() throws IOException {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("size.json"), "{\"size\": 3}");
    assertThatIOException()
        .isThrownBy(() -> Put.in(folder, new SizingAnswer(Questions.sizing(), Questions.order())))
        .withMessageContaining("size.json: this is none of Propcap's making; move it elsewhere");
    assertThat(Put.contents(folder)).containsOnlyKeys("size.json");
  }

  @Test
  void aNumberThatIsNotFiniteIsRefusedAndTheOldAnswerKept() throws IOException {
    Put.in(folder, new ComparisonAnswer(Questions.plain("a", "b", Questions.d(5, 2))));
    Map<String, String> old = Put.contents(folder);
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException()
          .isThrownBy(
              () ->
                  Put.in(
                      folder,
                      new ComparisonAnswer(Questions.plain("a", "b", Questions.d(5, bad)))));
    }
    assertThat(Put.contents(folder)).isEqualTo(old);
  }

  @Test
  void theComparisonHasEveryOutcomeAndInvestment() throws IOException {
    Put.in(folder, new ComparisonAnswer(Questions.comparison()));
    JsonObject json = json("comparison.json");
    assertThat(json.get("version").getAsString()).isEqualTo("0.1.0");
    assertThat(json.get("currency").getAsString()).isEqualTo("EUR");
    assertThat(json.getAsJsonArray("scenarios")).hasSize(4);
    assertThat(json.getAsJsonArray("verdicts")).hasSize(3);
    assertThat(json.getAsJsonArray("outcomes")).hasSize(16);
    JsonObject total = json.getAsJsonArray("outcomes").get(0).getAsJsonObject();
    assertThat(total.get("outcome").getAsString()).isEqualTo("on-time");
    assertThat(total.getAsJsonArray("levels")).hasSize(4);
    JsonObject difference = total.getAsJsonArray("differences").get(0).getAsJsonObject();
    assertThat(difference.keySet())
        .containsExactly("mean", "halfWidth", "se", "shareAhead", "narrowing", "differing");
    assertThat(difference.get("halfWidth").getAsDouble()).isEqualTo(210);
    JsonObject alike =
        json.getAsJsonArray("outcomes")
            .get(4)
            .getAsJsonObject()
            .getAsJsonArray("differences")
            .get(0)
            .getAsJsonObject();
    assertThat(alike.get("halfWidth").isJsonNull()).isTrue();
    JsonObject house = json.getAsJsonArray("investments").get(1).getAsJsonObject();
    JsonObject worth = house.getAsJsonObject("worth");
    assertThat(worth.get("buy").getAsBigDecimal()).isEqualByComparingTo("2600.5");
    assertThat(worth.get("paybackYears").getAsDouble()).isEqualTo(7.9);
    assertThat(worth.get("pays").getAsString()).isEqualTo("yes");
    assertThat(house.get("verdict").getAsString()).startsWith("Buy House 3, as in House 3: ");
    JsonObject place = house.getAsJsonArray("places").get(0).getAsJsonObject();
    assertThat(place.get("spacesNow").getAsInt()).isZero();
    assertThat(place.getAsJsonObject("price").get("buy").getAsBigDecimal())
        .isEqualByComparingTo("2600.5");
    JsonObject chamber = json.getAsJsonArray("investments").get(0).getAsJsonObject();
    assertThat(chamber.getAsJsonObject("worth").get("paybackYears").isJsonNull()).isTrue();
    JsonObject none = json.getAsJsonArray("investments").get(2).getAsJsonObject();
    assertThat(none.get("worth").isJsonNull()).isTrue();
    assertThat(csv("comparison.csv")).hasSize(48);
    assertThat(csv("comparison-money.csv")).hasSize(3);
    assertThat(csv("comparison-money.csv").get(0).getField("payback-years")).isEqualTo("never");
    assertThat(csv("comparison-money.csv").get(1).getField("payback-years")).isEqualTo("7.9");
  }

  @Test
  void whereNothingIsBoughtTheTableOfMoneyIsAsEmptyAsThePage() throws IOException {
    Put.in(folder, new ComparisonAnswer(Questions.comparison()));
    NamedCsvRecord none = csv("comparison-money.csv").get(2);
    assertThat(none.getField("gain")).isEqualTo("-1100");
    for (String field :
        List.of(
            "places",
            "without-cost",
            "buy",
            "yearly",
            "net-present-value",
            "net-present-value-half-width",
            "pays",
            "payback-years",
            "chance-pays")) {
      assertThat(none.getField(field)).as(field).isEmpty();
    }
  }

  @Test
  void sizesOfPlacesWithoutACostHaveNone() throws IOException {
    Put.in(folder, new SizingAnswer(Questions.pairs(), Questions.NO_ORDER));
    assertThat(csv("size.csv")).allSatisfy(r -> assertThat(r.getField("yearly-cost")).isEmpty());
    assertThat(csv("size.csv").get(0).getField("spaces-in-all")).isEqualTo("40");
    assertThat(
            json("size.json")
                .getAsJsonArray("candidates")
                .get(0)
                .getAsJsonObject()
                .get("yearlyCost")
                .isJsonNull())
        .isTrue();
    Put.in(folder, new SizingAnswer(Questions.sizing(), Questions.NO_ORDER));
    assertThat(csv("size.csv").get(1).getField("yearly-cost")).isEqualTo("658");
  }

  @Test
  void theBottleneckHasEveryPlaceAndStep() throws IOException {
    Put.in(folder, new BottlenecksAnswer(Questions.bottlenecks()));
    JsonObject json = json("bottleneck.json");
    assertThat(json.getAsJsonArray("worths")).hasSize(5);
    JsonObject house = json.getAsJsonArray("worths").get(0).getAsJsonObject();
    assertThat(house.getAsJsonObject("moreWaiting").keySet())
        .containsExactly("sow", "leave", "pot", "harden");
    JsonObject more = house.getAsJsonObject("more");
    assertThat(more.get("spaces").getAsInt()).isEqualTo(33);
    assertThat(more.get("plantsForEach").getAsDouble()).isEqualTo(1240 / 33.0);
    assertThat(more.get("pays").getAsString()).isEqualTo("yes");
    assertThat(json.getAsJsonArray("findings")).hasSize(3);
    assertThat(json.get("intervals").getAsInt()).isEqualTo(100);
    assertThat(json.getAsJsonArray("steps")).hasSize(4);
    assertThat(csv("bottleneck.csv").get(0).getField("more-wait-leave")).isEqualTo("-96");
    assertThat(csv("bottleneck.csv").get(1).getField("more-net-present-value")).isEqualTo("-420");
    assertThat(csv("bottleneck.csv").get(2).getField("fewer-on-time")).isEqualTo("210");
    assertThat(csv("bottleneck-steps.csv").get(3).getField("spaces-added")).isEqualTo("82");
    assertThat(csv("bottleneck-steps.csv").get(2).getField("step-pays")).isEqualTo("not-told");
  }

  @Test
  void withoutMoneyNothingStandsInItsPlace() throws IOException {
    Put.in(folder, new BottlenecksAnswer(Questions.noBottleneck()));
    JsonObject place = json("bottleneck.json").getAsJsonArray("worths").get(0).getAsJsonObject();
    assertThat(place.getAsJsonObject("more").get("margin").isJsonNull()).isTrue();
    assertThat(csv("bottleneck.csv").get(0).getField("more-margin")).isEmpty();
    assertThat(csv("bottleneck.csv"))
        .filteredOn(r -> r.getField("place").equals("Mats"))
        .singleElement()
        .satisfies(r -> assertThat(r.getField("fewer-on-time")).isEmpty());
    Put.in(folder, new ShiftsAnswer(Questions.shifts(false)));
    assertThat(csv("shift.csv").get(0).getField("margin")).isEmpty();
  }

  @Test
  void theSizeHasEveryCandidateAndTheOrder() throws IOException {
    Put.in(folder, new SizingAnswer(Questions.sizing(), Questions.order()));
    JsonObject json = json("size.json");
    assertThat(json.getAsJsonObject("goal").get("measure").getAsString()).isEqualTo("met");
    assertThat(json.getAsJsonArray("candidates")).hasSize(21);
    assertThat(json.get("guaranteed").getAsBoolean()).isFalse();
    assertThat(json.get("reached").getAsDouble()).isEqualTo(.034);
    assertThat(json.get("verdict").getAsString()).startsWith("Not decided in 2,000 springs: ");
    assertThat(json.get("guarantee").getAsString()).contains("or within 3.4 percentage points");
    assertThat(json.getAsJsonArray("candidates").get(20).getAsJsonObject().get("low").getAsDouble())
        .isEqualTo(.97);
    assertThat(json.getAsJsonObject("answer").getAsJsonArray("spaces").get(0).getAsInt())
        .isEqualTo(120);
    assertThat(json.getAsJsonArray("order")).hasSize(4);
    assertThat(json.getAsJsonArray("arithmetic")).hasSize(2);
    assertThat(csv("size.csv").stream().filter(r -> r.getField("is-answer").equals("yes")))
        .singleElement()
        .satisfies(r -> assertThat(r.getField("spaces of House 2")).isEqualTo("120"));
    NamedCsvRecord trays = csv("size-order.csv").get(2);
    assertThat(trays.getFields()).containsExactly("House 2", "trays", "1200", "trays");
    assertThat(csv("size-order.csv").get(0).getFields())
        .containsExactly("House 2", "table area", "24.1", "m2");
  }

  @Test
  void theShiftHasEveryGroupAndDay() throws IOException {
    Put.in(folder, new ShiftsAnswer(Questions.shifts(true)));
    JsonObject tomato = json("shift.json").getAsJsonArray("groups").get(0).getAsJsonObject();
    assertThat(tomato.get("best").getAsInt()).isEqualTo(-7);
    assertThat(tomato.getAsJsonArray("points")).hasSize(5);
    assertThat(csv("shift.csv")).hasSize(15);
    assertThat(csv("shift.csv").get(1).getField("standing")).isEqualTo("best");
  }

  @Test
  void aTerminalNamesAPlaceOnceAndThenALineForEachThing() {
    List<String> lines =
        new SizingAnswer(Questions.sizing(), Questions.order()).headlines().lines();
    assertThat(lines.subList(lines.size() - 7, lines.size()))
        .startsWith(
            "Order for House 2:",
            "  table area: 24.1 m2 (260 ft2)",
            "  tables, 1.5 x 3 m: 6",
            "  trays: 1,200",
            "Order for Mats:",
            "  heat mats: 2");
    assertThat(lines).last().asString().startsWith("Base spring: ");
  }

  @Test
  void headlinesFitATerminalAndSayTheVerdictFirst() {
    String endless = "a name that goes on and on ".repeat(12).strip();
    List<List<String>> all =
        List.of(
            new ComparisonAnswer(Questions.comparison()).headlines().lines(),
            new ComparisonAnswer(Questions.plain(endless, endless, Questions.d(-40, 210)))
                .headlines()
                .lines(),
            new BottlenecksAnswer(Questions.bottlenecks()).headlines().lines(),
            new BottlenecksAnswer(Questions.noBottleneck()).headlines().lines(),
            new SizingAnswer(Questions.sizing(), Questions.NO_ORDER).headlines().lines(),
            new SizingAnswer(Questions.pairs(), Questions.NO_ORDER).headlines().lines(),
            new ShiftsAnswer(Questions.shifts(true)).headlines().lines(),
            new ShiftsAnswer(Questions.unshifted()).headlines().lines());
    for (List<String> lines : all) {
      assertThat(lines).hasSizeBetween(2, 10);
      assertThat(lines)
          .allSatisfy(
              line -> assertThat(line).hasSizeLessThanOrEqualTo(100).doesNotContain("NaN", "null"));
    }
    assertThat(all.get(6).get(0))
        .startsWith("Sow tomato* 7 days earlier: +210 ± 60 of these plants");
    assertThat(all.get(6)).last().isEqualTo("Base spring: 400 springs of each shift, seed 7");
  }
}

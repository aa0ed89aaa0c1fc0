package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.evidence.Estimate;
import propcap.farm.PlaceKind;
import propcap.report.kit.Sheet.Cell;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** One table, as a file for a spreadsheet, as objects for other programs and on the page. */
class TableTest {
  private static final Stat OFTEN = new Stat(12.5, 0.25, new MeanLimits(12, 13), 40, 39, 9, 12, 16);
  private static final Stat SELDOM = new Stat(0.05, 0.04, null, 40, 2, 0, 0, 0);
  private static final Difference ALWAYS = new Difference(3, 0, 0, 1, null, 40);

  private record Crop(String name, @Nullable Stat plants, @Nullable Difference more) {}

  private static final Table<Crop> CROPS =
      new Table<Crop>("Crop", Crop::name)
          .file("crop-name", Crop::name)
          .stat("on-time", Crop::plants)
          .difference("gain", Crop::more)
          .cell("More", "plants", c -> c.more() == null ? Cell.NONE : Cell.of(c.more()));

  private static String csv(@Nullable Object value) {
    return new Table<Integer>().csv("x", row -> value).csv(List.of(1)).lines().toList().get(1);
  }

  @Test
  void aStatHasEightFieldsAndADifferenceSix() {
    assertThat(CROPS.csv(List.of(new Crop("kale", OFTEN, ALWAYS))).lines())
        .containsExactly(
            "crop-name,on-time,on-time-se,on-time-low,on-time-high,on-time-unlike,on-time-p10,"
                + "on-time-p50,on-time-p90,gain,gain-half-width,gain-se,gain-share-ahead,"
                + "gain-narrowing,gain-differing",
            "kale,12.5,0.25,12,13,39,9,12,16,3,,,1,,40");
  }

  @Test
  void whatWasSeenTooSeldomForLimitsHasNoErrorAndWhatThereIsNotLeavesAllFieldsEmpty() {
    assertThat(CROPS.csv(List.of(new Crop("kale", SELDOM, null))).lines().skip(1))
        .containsExactly("kale,0.05,,,,2,0,0,0,,,,,,");
  }

  @Test
  void theSameNamesAreThoseOfMembersForOtherPrograms() {
    assertThat(CROPS.members(new Crop("kale", OFTEN, null)).keySet())
        .containsExactly("cropName", "onTime", "gain");
    assertThat(CROPS.members(new Crop("kale", OFTEN, null)).get("gain")).isNull();
    assertThat(CROPS.object(null)).isNull();
    assertThat(Table.camel("net-present-value")).isEqualTo("netPresentValue");
  }

  @Test
  void onThePageStandOnlyTheColumnsThatArePutThere() {
    Sheet sheet = CROPS.sheet("Crops.", "Below.", List.of(new Crop("kale", OFTEN, ALWAYS)));
    assertThat(sheet.columns())
        .containsExactly(Sheet.Column.words("Crop"), Sheet.Column.number("More", "plants"));
    assertThat(sheet.rows())
        .containsExactly(new Sheet.Row("kale", List.of(Cell.of("+3").strongIf(true))));
  }

  @Test
  void aFieldIsWrittenByWhatItIs() {
    assertThat(csv(1.0 / 3)).isEqualTo("0.3333");
    assertThat(csv(100.0)).isEqualTo("100");
    assertThat(csv(-14)).isEqualTo("-14");
    assertThat(csv(new BigDecimal("1E+3"))).isEqualTo("1000");
    assertThat(csv(LocalDate.of(2027, 5, 9))).isEqualTo("2027-05-09");
    assertThat(csv(PlaceKind.HEAT_BENCH)).isEqualTo("heat-bench");
    assertThat(csv(null)).isEmpty();
  }

  @Test
  void noNameIsAFormulaNeitherInARowNorInAHead() {
    for (String name : List.of("=1+1", "@x", "+x", "-x", "'=x")) {
      assertThat(csv(name)).isEqualTo("'" + name);
    }
    assertThat(new Table<Integer>().csv("=beds", row -> row).csv(List.of(7)).lines())
        .containsExactly("'=beds", "7");
  }

  @Test
  void aNumberThatIsNotFiniteIsNotWritten() {
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertThatIllegalArgumentException().isThrownBy(() -> csv(bad));
    }
  }

  @Test
  void columnsOfAnotherTableBearItsNameAndAreEmptyWhereItsRowIsLacking() {
    Table<Estimate> estimate = new Table<Estimate>().file("rate", Table.ESTIMATE, e -> e);
    Table<List<@Nullable Estimate>> table =
        new Table<List<@Nullable Estimate>>().file("first", estimate, row -> row.get(0));
    List<List<@Nullable Estimate>> rows =
        List.of(
            Arrays.asList(new Estimate(0.5, Double.NEGATIVE_INFINITY, 0.75)),
            Arrays.asList((Estimate) null));
    assertThat(table.csv(rows).lines())
        .containsExactly("first-rate,first-rate-low,first-rate-high", "0.5,,0.75", ",,");
    assertThat(table.members(rows.get(1))).containsOnlyKeys("first");
  }

  @Test
  void furtherColumnsStandOnlyWhereSomethingIsSo() {
    for (boolean isSo : new boolean[] {true, false}) {
      Table<Integer> table =
          new Table<Integer>().json("n", row -> row).when(isSo, t -> t.json("more", row -> 1));
      assertThat(table.members(3)).isEqualTo(isSo ? Map.of("n", 3, "more", 1) : Map.of("n", 3));
    }
  }
}

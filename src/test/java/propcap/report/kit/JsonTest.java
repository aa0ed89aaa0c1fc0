package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.evidence.Estimate;
import propcap.farm.RoomWait;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** Files for other programs, from records. */
class JsonTest {
  private record Of(@Nullable Object it) {}

  private record Currency(Optional<String> currency, String name) {}

  private record Counted(long number, Map<RoomWait, Double> waiting) {}

  private static String it(@Nullable Object it) {
    String text = Json.text(new Of(it));
    return text.substring(text.indexOf(':') + 2, text.length() - 3).replaceAll("\\s+", " ");
  }

  @Test
  void aRecordsComponentsAreItsMembersInTheirOrder() {
    Map<RoomWait, Double> waiting = new LinkedHashMap<>();
    waiting.put(RoomWait.POT, 1.0);
    waiting.put(RoomWait.SOW, 0.1);
    assertThat(Json.text(new Of("<b> & 'b'"), new Counted(7, waiting)))
        .isEqualTo(
            """
            {
              "it": "<b> & 'b'",
              "number": 7,
              "waiting": {
                "pot": 1.0,
                "sow": 0.1
              }
            }
            """);
  }

  @Test
  void numbersAreInFullPrecisionAndMoneyExact() {
    assertThat(it(1.0 / 3)).isEqualTo("0.3333333333333333");
    assertThat(it(12)).isEqualTo("12");
    assertThat(it(new BigDecimal("5200.10"))).isEqualTo("5200.10");
    assertThat(it(LocalDate.of(2027, 5, 9))).isEqualTo("\"2027-05-09\"");
  }

  @Test
  void whatThereIsNotIsNullAndWhatIsNotAskedIsLeftOut() {
    assertThat(it(null)).isEqualTo("null");
    assertThat(Json.text(new Currency(Optional.of("EUR"), "x"))).contains("\"currency\": \"EUR\"");
    assertThat(Json.text(new Currency(Optional.empty(), "x")))
        .isEqualTo("{\n  \"name\": \"x\"\n}\n");
    assertThat(it(new Currency(Optional.empty(), "x"))).isEqualTo("{ \"name\": \"x\" }");
  }

  @Test
  void aStatSaysNoErrorWhereItHasNoLimits() {
    assertThat(it(new Stat(2, 0.5, new MeanLimits(1, 3), 40, 30, 0, 2, 4)))
        .isEqualTo(
            "{ \"mean\": 2.0, \"se\": 0.5, \"low\": 1.0, \"high\": 3.0, \"unlike\": 30, \"p10\": 0.0,"
                + " \"p50\": 2.0, \"p90\": 4.0 }");
    assertThat(it(new Stat(2, 0.5, null, 40, 1, 2, 2, 2)))
        .startsWith("{ \"mean\": 2.0, \"se\": null, \"low\": null, \"high\": null, \"unlike\": 1,");
  }

  @Test
  void aDifferenceThatIsAlwaysTheSameHasNoError() {
    assertThat(it(Difference.NONE))
        .isEqualTo(
            "{ \"mean\": 0.0, \"halfWidth\": null, \"se\": null, \"shareAhead\": 0.0, \"narrowing\":"
                + " null, \"differing\": 0 }");
    assertThat(it(new Difference(4, 1, 0.5, 0.75, 2.0, 33)))
        .isEqualTo(
            "{ \"mean\": 4.0, \"halfWidth\": 1.0, \"se\": 0.5, \"shareAhead\": 0.75, \"narrowing\":"
                + " 2.0, \"differing\": 33 }");
  }

  @Test
  void aLimitThatIsNotThereIsNull() {
    assertThat(it(new Estimate(1, Double.NEGATIVE_INFINITY, 2)))
        .isEqualTo("{ \"value\": 1.0, \"low\": null, \"high\": 2.0 }");
  }

  @Test
  void aNumberThatIsNotFiniteIsRefusedWhereverItStands() {
    for (double bad : new double[] {Double.NaN, Double.NEGATIVE_INFINITY}) {
      for (Object it :
          List.of(bad, List.of(1.0, bad), new Counted(1, Map.of(RoomWait.SOW, bad)), stat(bad))) {
        assertThatIllegalArgumentException()
            .isThrownBy(() -> Json.text(new Of(it)))
            .withMessage("the results hold a number that is not finite");
      }
    }
  }

  private static Stat stat(double mean) {
    return new Stat(mean, 0, null, 1, 0, 0, 0, 0);
  }
}

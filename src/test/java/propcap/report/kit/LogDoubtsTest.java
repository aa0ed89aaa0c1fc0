package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.farm.UnlikelyTray;
import propcap.farm.UnlikelyTray.Kind;

/** Trays that were too early or too late, in words. */
class LogDoubtsTest {
  @Test
  void traysOfASowingAreToldTogether() {
    assertThat(
            LogDoubts.told(
                List.of(
                    new UnlikelyTray("lettuce-2", "1", Kind.STILL_IN_HEAT, 9, 3),
                    new UnlikelyTray("lettuce-2", "2", Kind.STILL_IN_HEAT, 8, 3))))
        .containsExactly(
            "lettuce-2: by the log 2 trays have been in the heat for 8 to 9 days, though there was"
                + " room to leave; usual is 3 days. Is a row off-heat missing? As it stands, the"
                + " seed is taken as poor.");
  }

  @Test
  void eachKindIsAWholeSentenceAndOfManyTheFirstAreTold() {
    for (Kind kind : Kind.values()) {
      assertThat(LogDoubts.told(List.of(new UnlikelyTray("a", "1", kind, 1, 10))))
          .singleElement()
          .asString()
          .startsWith("a: by the log 1 tray ")
          .contains("1 day", "usual is 10 days")
          .endsWith(".");
    }
    List<UnlikelyTray> many =
        IntStream.range(0, 7)
            .mapToObj(i -> new UnlikelyTray("s" + i, "1", Kind.STILL_ON_TABLE, 20, 10))
            .toList();
    assertThat(LogDoubts.told(many))
        .hasSize(6)
        .last()
        .isEqualTo("There are 2 more such lines in the log.");
    assertThat(LogDoubts.told(List.of())).isEmpty();
  }
}

package propcap.files.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaultWordsTest {
  private static final List<String> KEYS = List.of("spaces", "kind", "climate", "stretch-loss");

  @Test
  void aSlipOfThePenIsNearAndAnotherWordIsNot() {
    assertThat(FaultWords.nearest("spcaes", KEYS)).contains("spaces");
    assertThat(FaultWords.nearest("Kind", KEYS)).contains("kind");
    assertThat(FaultWords.nearest("stretchloss", KEYS)).contains("stretch-loss");
    assertThat(FaultWords.nearest("colour", KEYS)).isEmpty();
    assertThat(FaultWords.nearest("", KEYS)).isEmpty();
    assertThat(FaultWords.nearest("spaces".repeat(1000), KEYS)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "'', abc, 3",
    "abc, abc, 0",
    "abc, acb, 1",
    "abc, abxc, 1",
    "abc, bc, 1",
    "abc, xbc, 1",
    "kitten, sitting, 3",
  })
  void slipsAreCountedLetterByLetter(String a, String b, int slips) {
    assertThat(FaultWords.slips(a, b)).isEqualTo(slips);
    assertThat(FaultWords.slips(b, a)).isEqualTo(slips);
  }
}

package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
  private static final List<String> KEYS = List.of("spaces", "kind", "climate", "stretch-loss");

  @Test
  void aSlipOfThePenIsNearAndAnotherWordIsNot() {
    assertThat(Words.nearest("spcaes", KEYS)).contains("spaces");
    assertThat(Words.nearest("Kind", KEYS)).contains("kind");
    assertThat(Words.nearest("stretchloss", KEYS)).contains("stretch-loss");
    assertThat(Words.nearest("colour", KEYS)).isEmpty();
    assertThat(Words.nearest("", KEYS)).isEmpty();
    assertThat(Words.nearest("spaces".repeat(1000), KEYS)).isEmpty();
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
    assertThat(Words.slips(a, b)).isEqualTo(slips);
    assertThat(Words.slips(b, a)).isEqualTo(slips);
  }
}

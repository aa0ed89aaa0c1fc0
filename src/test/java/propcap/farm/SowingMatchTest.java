package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which sowings a match with stars names. */
class SowingMatchTest {
  @ParameterizedTest
  @CsvSource({
    "tomato-1, tomato-1, true",
    "tomato*, tomato-1, true",
    "tomato*, tomato, true",
    "*-1, tomato-1, true",
    "t*o-*, tomato-1, true",
    "*, tomato-1, true",
    "'', tomato-1, false",
    "tomato, tomato-1, false",
    "*-2, tomato-1, false",
    "tomato-1, tomato-*, false",
    "a*a*a*b, aaaaaaaaaaaaaaaaaaaaaaaa, false",
  })
  void aStarStandsForAnyLetters(String pattern, String name, boolean matches) {
    assertThat(Sowing.matches(pattern, name)).isEqualTo(matches);
  }

  /** Against a regular expression, on short words of two letters and stars. */
  @Test
  void itIsAsARegularExpressionSays() {
    SplittableRandom random = new SplittableRandom(1);
    for (int n = 0; n < 20_000; n++) {
      String match = word(random, "ab*");
      String id = word(random, "ab");
      assertThat(Sowing.matches(match, id))
          .as(match + " on " + id)
          .isEqualTo(Pattern.matches(match.replace("*", ".*"), id));
    }
  }

  private static String word(SplittableRandom random, String letters) {
    StringBuilder word = new StringBuilder();
    for (int length = random.nextInt(7); word.length() < length; ) {
      word.append(letters.charAt(random.nextInt(letters.length())));
    }
    return word.toString();
  }
}

package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Farms;
import propcap.farm.Scenario;

class NamesInQuestionsTest {
  private static final Scenario FARM =
      withSowings("tomato-1", "tomato-2", "cherry tomato-1", "a.b (late)", "axb", "c\\E*d");

  private static Scenario withSowings(String... ids) {
    Farms farm = new Farms();
    farm.sowings = Arrays.stream(ids).map(id -> Farms.sowing(id, 0, 1)).toList();
    return farm.make();
  }

  @ParameterizedTest
  @CsvSource({
    "tomato-1, 0",
    "tomato*, 0 1",
    "*tomato*, 0 1 2",
    "*-1, 0 2",
    "t*-*, 0 1",
    "*, 0 1 2 3 4 5",
    "a.b (late), 3",
    "a.b*, 3",
    "a*b*, 3 4",
    "c\\E*d, 5"
  })
  void aStarStandsForAnyLettersAndAllElseForItself(String match, String numbers)
      throws BadQuestionException {
    assertThat(NamesInQuestions.sowings(FARM, match))
        .isEqualTo(Arrays.stream(numbers.split(" ")).map(Integer::valueOf).toList());
  }

  @ParameterizedTest
  @CsvSource({"tomato, 0 1", "Tomato, 0 1", "cherry tomato, 2", "axb, 4"})
  void aNameWithoutAStarIsThatOfASowingOrOfAllThatDifferByTheirNumber(String match, String numbers)
      throws BadQuestionException {
    assertThat(NamesInQuestions.sowings(FARM, match))
        .isEqualTo(Arrays.stream(numbers.split(" ")).map(Integer::valueOf).toList());
  }

  @Test
  void aCropsNameMeansAllItsSowingsWhateverTheirIds() throws BadQuestionException {
    String crop = FARM.sowings().get(0).crop();
    assertThat(NamesInQuestions.sowings(FARM, crop)).hasSameSizeAs(FARM.sowings());
  }

  /** An id comes before a crop, and a crop before ids without their number. */
  @Test
  void whatNamesSeveralThingsIsTheNearest() throws BadQuestionException {
    assertThat(NamesInQuestions.sowings(withSowings("a", "cosmos", "cosmos-1"), "cosmos"))
        .containsExactly(1);
    assertThat(NamesInQuestions.sowings(withSowings("a", "cosmos-1", "cosmos-2"), "cosmos"))
        .containsExactly(0, 1, 2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "tom", "Tomato*", "tomato-?", "tom.*", "[t]*", "tomato-1 "})
  void aMatchThatNamesNothingIsRefusedWithWhatAMatchIs(String match) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> NamesInQuestions.sowings(FARM, match))
        .withMessageStartingWith(
            "no sowing's id matches '"
                + match
                + "', and no crop that is sown has that name; a match is such as ")
        .withMessageEndingWith(" or tomato-1");
  }

  @Test
  void aPlaceIsFoundByItsWholeName() throws BadQuestionException {
    assertThat(List.of(NamesInQuestions.place(FARM, "Mats"), NamesInQuestions.place(FARM, "Yard")))
        .containsExactly(0, 2);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "mats", "Mat", "House 2"})
  void anUnknownPlaceIsRefusedWithThoseThatThereAre(String name) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> NamesInQuestions.place(FARM, name))
        .withMessage("no place is named '" + name + "'; there are Mats, House, Yard");
  }
}

package propcap.study.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/**
 * Orders written by hand. A 1020 flat is 0.28 x 0.54 m outside, 6.6 to the square metre: trade
 * convention, from memory.
 */
class FurnishingTest {
  private static final String POTS = "House: pots, if all the new room is for cosmos in pots";

  private final Farms farm = new Farms();
  private final Crops crop = new Crops();

  private Scenario scenario() {
    farm.crops = List.of(crop.make());
    farm.sowings = List.of(Farms.sowing("a", 0, 1));
    return farm.make();
  }

  private static Sizing answer(Scenario scenario, @Nullable Candidate answer, String... places) {
    return new Sizing(
        scenario,
        new RunSettings(1, 100, null, 1),
        List.of(places),
        new Goal(Goal.Measure.MET, .9),
        "*",
        .02,
        .01,
        .95,
        List.of(),
        answer,
        null,
        null,
        100,
        100);
  }

  private FurnishingList order(double aisles, String place, int spaces)
      throws BadQuestionException {
    return new Furnishing(aisles).of(answer(scenario(), size(spaces), place));
  }

  private static Candidate size(Integer... spaces) {
    return new Candidate(List.of(spaces), 100, .95, .93, .97, Found.HOLDS, 1);
  }

  private static String amount(FurnishingList order, String what) {
    return order.lines().stream()
        .filter(l -> (l.place() + ": " + l.what()).equals(what))
        .map(FurnishingList.Line::shown)
        .findFirst()
        .orElse("none");
  }

  /** The number in front of a unit. */
  private static double number(String amount, String unit) {
    String before = amount.substring(0, amount.indexOf(" " + unit));
    return Double.parseDouble(before.replaceAll(".*[ (]", "").replace(",", ""));
  }

  /** 76 spaces, less the 10 that there are, at 0.1512 m2: 9.98 m2, at 10.764 ft2 to the m2 107. */
  @Test
  void aTableIsOrderedByTheFlatsThatGoOnIt() throws BadQuestionException {
    FurnishingList order = order(.25, "House", 76);
    assertThat(amount(order, "House: room for trays")).isEqualTo("66 spaces");
    assertThat(amount(order, "House: table area")).isEqualTo("10.0 m2 (107 ft2)");
    // More than one table of 9 m2.
    assertThat(amount(order, "House: tables of 1.5 x 6 m")).isEqualTo("2");
    assertThat(amount(order, "House: trays to fill it")).isEqualTo("66");
    assertThat(order.arithmetic())
        .contains(
            "House: 66 spaces x 0.28 m x 0.54 m (a 1020 flat) = 9.98 m2 = 107 ft2.",
            "9.98 m2 / 9 m2 a table = 1.11, so 2 tables; 2 x 9 m2 / (1 - 25 % aisle) = 24.0 m2 of"
                + " floor.");
  }

  @Test
  void sixFlatsAndALittleMoreGoOnASquareMetre() throws BadQuestionException {
    double m2 = number(amount(order(0, "House", 10_010), "House: table area"), "m2");
    assertThat(10_000 / m2).isCloseTo(6.6, within(.05));
  }

  @Test
  void aisleIsAShareOfTheFloorAndNotOfTheTable() throws BadQuestionException {
    // Two tables of 9 m2 are three quarters of 24 m2, and all of the floor without aisles.
    assertThat(amount(order(.25, "House", 76), "House: floor with aisles"))
        .isEqualTo("24.0 m2 (258 ft2)");
    assertThat(amount(order(0, "House", 76), "House: floor with aisles"))
        .isEqualTo("18.0 m2 (194 ft2)");
  }

  /**
   * University of Arkansas, greenhouse course, unit 2 section 5: a house of 38 x 60 ft with side
   * benches and aisles has 1,140 ft2 of bench on 2,280 ft2, 50 %. As many flats as fit on that
   * bench, 700, need that house again, but for less than the room of one flat (1.63 ft2), and for
   * the part of the last table (9 m2 or 96.9 ft2) that stays empty, each with its aisle.
   */
  @Test
  void theBenchesOfTheCoursesHouseNeedTheCoursesHouse() throws BadQuestionException {
    FurnishingList order = order(.5, "House", 710);
    assertThat(number(amount(order, "House: table area"), "ft2")).isCloseTo(1140, within(1.63));
    assertThat(number(amount(order, "House: floor with aisles"), "ft2"))
        .isBetween(2280 - 2 * 1.63, 2280 + 2 * 96.9);
  }

  @Test
  void tablesThatAreJustFilledAreNotOrderedTwice() throws BadQuestionException {
    // 59 flats are 8.92 m2, 60 are 9.07.
    assertThat(amount(order(0, "House", 69), "House: tables of 1.5 x 6 m")).isEqualTo("1");
    assertThat(amount(order(0, "House", 70), "House: tables of 1.5 x 6 m")).isEqualTo("2");
  }

  @Test
  void aHeatBenchTakesMatsOfFourFlats() throws BadQuestionException {
    assertThat(amount(order(0, "Mats", 18), "Mats: heat mats for 4 flats")).isEqualTo("2");
    assertThat(amount(order(0, "Mats", 19), "Mats: heat mats for 4 flats")).isEqualTo("3");
    assertThat(amount(order(0, "House", 19), "House: heat mats for 4 flats")).isEqualTo("none");
  }

  @Test
  void aYardAndAChamberNeedNoTables() throws BadQuestionException {
    farm.morePlaces.add(
        new Place("Chamber", PlaceKind.CHAMBER, 0, new Climate.Constant(22), 0, null));
    FurnishingList yard = order(.5, "Yard", 20);
    assertThat(amount(yard, "Yard: ground area, without paths")).isEqualTo("1.5 m2 (16 ft2)");
    FurnishingList chamber = order(.5, "Chamber", 10);
    assertThat(amount(chamber, "Chamber: shelf area")).isEqualTo("1.5 m2 (16 ft2)");
    assertThat(List.of(yard, chamber))
        .flatExtracting(FurnishingList::lines)
        .extracting(FurnishingList.Line::what)
        .noneMatch(what -> what.contains("tables") || what.contains("floor"));
  }

  @Test
  void potsAreOrderedForTheCropThatPacksMostOfThem() throws BadQuestionException {
    assertThat(amount(order(0, "House", 20), POTS)).isEqualTo("none");
    crop.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.IF_HELD, 18, 5, 10, 0);
    assertThat(amount(order(0, "House", 20), POTS)).isEqualTo("180");
    assertThat(order(0, "House", 20).arithmetic())
        .contains(
            "Pots: at most 18 to a space (cosmos packs most), x 10 spaces = 180; none for what is"
                + " not potted on there.");
  }

  @Test
  void aHugeOrderIsCountedExactly() throws BadQuestionException {
    crop.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.IF_HELD, 72, 5, 10, 0);
    // 72 x 100,000,000 is more than an int holds.
    FurnishingList order = order(0, "House", 100_000_010);
    assertThat(amount(order, POTS)).isEqualTo("7,200,000,000");
    assertThat(order.lines()).allSatisfy(line -> assertThat(line.amount()).isPositive());
  }

  @Test
  void whatIsThereAlreadyIsNotOrdered() throws BadQuestionException {
    FurnishingList order = order(.25, "House", 10);
    assertThat(order.lines()).isEmpty();
    assertThat(order.arithmetic())
        .containsExactly("House has 10 spaces already, and 10 are enough: nothing to order.");
  }

  @Test
  void twoPlacesAreOrderedEachForItself() throws BadQuestionException {
    FurnishingList order =
        new Furnishing(.25).of(answer(scenario(), size(11, 12), "House", "Mats"));
    assertThat(amount(order, "House: room for trays")).isEqualTo("1 space");
    assertThat(amount(order, "Mats: room for trays")).isEqualTo("2 spaces");
  }

  @Test
  void noAnswerIsNoOrder() throws BadQuestionException {
    FurnishingList order = new Furnishing(.25).of(answer(scenario(), null, "House"));
    assertThat(order.lines()).isEmpty();
    assertThat(order.arithmetic()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {-.01, 1, 25, Double.NaN})
  void aShareOfAisleThatLeavesNoRoomIsRefused(double aisles) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> new Furnishing(aisles))
        .withMessage("a share of aisle is from 0 % to less than 100 %");
  }
}

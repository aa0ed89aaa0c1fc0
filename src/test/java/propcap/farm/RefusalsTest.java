package propcap.farm;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What the records refuse, and that they say what they were given. */
class RefusalsTest {
  private static final LocalDate MARCH_1 = Farms.START;

  @ParameterizedTest(name = "{0}")
  @MethodSource({"crops", "quantities", "plans", "farms"})
  void aBadValueIsRefusedWithWhatWasGiven(String message, ThrowingCallable made) {
    assertThatIllegalArgumentException().isThrownBy(made).withMessageContaining(message);
  }

  private static Arguments refused(String message, ThrowingCallable made) {
    return arguments(message, made);
  }

  private static Arguments crop(String message, Consumer<Crops> change) {
    return arguments(
        message,
        (ThrowingCallable)
            () -> {
              Crops crop = new Crops();
              change.accept(crop);
              crop.make();
            });
  }

  private static Arguments farm(String message, Consumer<Farms> change) {
    return arguments(
        message,
        (ThrowingCallable)
            () -> {
              Farms farm = new Farms();
              change.accept(farm);
              farm.make();
            });
  }

  private static Arguments emergence(
      String message,
      double base,
      double optimum,
      double ceiling,
      double at,
      double half,
      double most) {
    return refused(message, () -> new Crop.Emergence(base, optimum, ceiling, at, half, most));
  }

  static Stream<Arguments> crops() {
    return Stream.of(
        crop("a crop needs a name", c -> c.name = " "),
        crop("cells per tray must be 1 or more, was 0", c -> c.cells = 0),
        crop("seeds per cell must be 1 or more, was -2", c -> c.seedsPerCell = -2),
        crop("cosmos needs a place to germinate in", c -> c.germinateIn = List.of()),
        crop("leave-at must be between 0 and 100 %, was 150.0 %", c -> c.leaveAt = 1.5),
        crop("leave-at must be more than 0 %", c -> c.leaveAt = 0),
        crop("pull-after must be more than 0, was 0.0", c -> c.pullAfterDays = 0),
        crop("stand-window must be 0 or more, was -1.0", c -> c.standWindowDays = -1),
        crop("fail-below must be between 0 and 100 %, was -10.0 %", c -> c.failBelow = -0.1),
        crop("growing-on takes must be more than 0, was 0.0", c -> c.takesDays = 0),
        crop("spread must be 0 or more, was -0.5", c -> c.spread = -0.5),
        crop("growing-on loss must be between 0 and 100 %, was NaN", c -> c.loss = Double.NaN),
        crop("holds must be 0 or more, was Infinity", c -> c.holdsDays = 1 / 0.0),
        crop("overheld-loss must be between 0 and 100 %, was 200", c -> c.overheldLossPerDay = 2));
  }

  static Stream<Arguments> quantities() {
    return Stream.of(
        refused("germination rate must be", () -> new Crop.Germination(1.1, 0, 0)),
        refused("tested-seeds must be 0 or more, was -1.0", () -> new Crop.Germination(1, -1, 0)),
        refused("tray-correlation must be less than 1", () -> new Crop.Germination(1, 0, 1)),
        emergence("base must be below optimum (29.0 C), was 29.0", 29, 29, 38, 33, 6, 9),
        emergence("optimum must be below ceiling (28.0 C), was 29.0", 9, 29, 28, 22, 6, 9),
        emergence("at must lie between base and ceiling, was 9.0", 9, 29, 38, 9, 6, 9),
        emergence("at must lie between base and ceiling, was 38.0", 9, 29, 38, 38, 6, 9),
        emergence("half-by must be more than 0, was 0.0", 9, 29, 38, 22, 0, 9),
        emergence("later than half-by (6.0 days), was 6.0", 9, 29, 38, 22, 6, 6),
        emergence("most-by must be a finite number, was Infinity", 9, 29, 38, 22, 6, 1 / 0.0),
        emergence("emergence base must be a finite number", -1 / 0.0, 29, 38, 22, 6, 9),
        emergence("optimum (NaN C)", 9, Double.NaN, 38, 22, 6, 9),
        emergence("at must lie between base and ceiling, was NaN", 9, 29, 38, Double.NaN, 6, 9),
        refused(
            "base must be below optimum (8.0 C), was 8.0",
            () -> new Crop.GrowingOn(8, 8, 18, 24, 0, 0, Crop.DampingOff.NONE, 10, 0)),
        refused(
            "at must be above base (8.0 C), was 8.0",
            () -> new Crop.GrowingOn(8, 24, 8, 24, 0, 0, Crop.DampingOff.NONE, 10, 0)),
        refused("damping-off chance must be", () -> new Crop.DampingOff(-0.1, 0.4)),
        refused("damping-off severity must be", () -> new Crop.DampingOff(0.1, 1.4)),
        refused(
            "pots-per-tray must be 1 or more, was 0",
            () -> new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 0, 20, 12, 0)),
        refused(
            "hardening takes must be 0 or more, was -1.0",
            () -> new Crop.Hardening(-1, 2, -2, 0, 0, 0.1, 0)),
        refused("frost-risk must be between 0 and 100 %, was 110", () -> hardeningAtRisk(1.1)),
        refused("a constant temperature must be", () -> new Climate.Constant(Double.NaN)),
        refused(
            "vent-at must be at least heat-to (14.0 C), was 10.0",
            () -> new Climate.Heated(14, 5, 10)));
  }

  private static void hardeningAtRisk(double risk) {
    new Crop.Hardening(10, 2, -2, 0.1, 0.02, risk, 0);
  }

  private static void sowing(
      String id, String lot, int trays, int needed, int bedBy, LocalDate bedUntil) {
    LocalDate bedFrom = MARCH_1.plusDays(20);
    LocalDate by = MARCH_1.plusDays(bedBy);
    new Sowing(
        id,
        "cosmos",
        lot,
        MARCH_1,
        trays,
        needed,
        bedFrom,
        by,
        bedUntil,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  static Stream<Arguments> plans() {
    LocalDate april = LocalDate.of(2027, 4, 1);
    return Stream.of(
        refused("a sowing needs an id", () -> sowing("", "lot", 1, 1, 30, april)),
        refused("a needs a seed lot", () -> sowing("a", "", 1, 1, 30, april)),
        refused("trays of a must be 1 or more, was 0", () -> sowing("a", "l", 0, 1, 30, april)),
        refused("plants-needed of a must be 0 or more", () -> sowing("a", "l", 1, -1, 30, april)),
        refused(
            "bed-by must not be before bed-from 2027-03-21, was 2027-03-20",
            () -> sowing("a", "l", 1, 1, 19, april)),
        refused(
            "bed-until must not be before bed-by 2027-04-02, was 2027-04-01",
            () -> sowing("a", "l", 1, 1, 32, april)),
        refused(
            "the season must end on or after 2027-03-01, was 2027-02-28",
            () -> new Season(MARCH_1, MARCH_1.minusDays(1))),
        refused(
            "at least one day of the week",
            () -> new Rounds(LocalTime.NOON, Set.of(DayOfWeek.values()))),
        refused(
            "tmin must not be above tmax on 2027-03-01",
            () -> new WeatherRecord.Day(MARCH_1, 5, 4)),
        refused(
            "tmax of 2027-03-01 must be a finite number, was NaN",
            () -> new WeatherRecord.Day(MARCH_1, 5, Double.NaN)),
        refused(
            "as many minima as maxima",
            () -> new WeatherYear(2021, new double[] {1}, new double[] {2, 3})));
  }

  static Stream<Arguments> farms() {
    return Stream.of(
        farm("spaces of Mats must be 0 or more, was -1", f -> f.mats = -1),
        farm("stretch-loss of Mats must be between", f -> f.stretchLossPerDay = 7),
        farm("a season needs a place of kind table", f -> f.house = 0),
        farm("a season needs a place of kind hardening", f -> f.yard = 0),
        farm(
            "a weather year must have a row for each day",
            f -> f.season = new Season(MARCH_1, MARCH_1.plusDays(30))),
        farm(
            "each sowing needs an id of its own",
            f -> f.sowings.addAll(List.of(Farms.sowing("a", 1, 1), Farms.sowing("a", 2, 1)))),
        farm(
            "a is sown outside the season: 2027-02-28",
            f -> f.sowings.add(Farms.sowing("a", -1, 1))),
        farm(
            "the crop list lacks cosmos",
            f -> {
              f.crops.clear();
              f.sowings.add(Farms.sowing("a", 1, 1));
            }),
        farm(
            "no open place can germinate cosmos",
            f -> {
              f.mats = 0;
              f.sowings.add(Farms.sowing("a", 1, 1));
            }),
        farm("no place is named Attic", f -> germinatingIn(f, "Attic")),
        farm("nothing germinates in a hardening area", f -> germinatingIn(f, "Yard")));
  }

  private static void germinatingIn(Farms farm, String place) {
    Crops crop = new Crops();
    crop.germinateIn = List.of(place);
    farm.crops.set(0, crop.make());
    farm.sowings.add(Farms.sowing("a", 1, 1));
  }
}

package propcap.report.now;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.kit.Sheet;
import propcap.report.kit.Words;
import propcap.study.RunSettings;
import propcap.study.Stats;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecasting;
import propcap.study.now.AskingNow;
import propcap.study.now.SeasonNow;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Chance;
import propcap.study.now.SeasonNow.Kind;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.now.SeasonNow.Trays;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/** What now, in words. It is the morning of 11 March 2027, day 10. */
class NowWordsTest {
  private static final RunSettings SETTINGS = new RunSettings(1, 4, null, 1);
  private static final int NO_DAY = -1;
  private static final Trays BEGUN = new Trays(0, 0, 0, 2, 0, 0, 0, 0);
  private static final Trays NOT_BEGUN = new Trays(2, 0, 0, 0, 0, 0, 0, 0);

  private final List<SowingNow> sowings = new ArrayList<>();
  private final List<Advice> advice = new ArrayList<>();
  private final List<Sowing> notHelped = new ArrayList<>();
  private Forecast forecast;

  @BeforeEach
  void aFarmOnADay() throws Exception {
    Farms farm = new Farms();
    for (String id : List.of("a", "b", "c", "d", "e", "f")) {
      farm.sowings.add(Farms.sowing(id, 30, 2, 0, 50));
    }
    Scenario made = farm.make();
    forecast =
        Forecasting.forecast(
            made.withSoFar(new SoFar(Farms.day(10), List.of(), List.of())), SETTINGS, done -> {});
  }

  private Sowing next() {
    return forecast.scenario().sowings().get(sowings.size());
  }

  private static SowingForecast forecast(
      Sowing sowing, double chance, double low, double high, @Nullable LocalDate readyBy) {
    return new SowingForecast(
        sowing,
        Stats.always(20, 4),
        Stats.of(1803.6, 4.7, 1750, 1803, 1850),
        Stats.always(0, 4),
        chance,
        low,
        high,
        null,
        null,
        null,
        null,
        readyBy,
        Map.of(),
        Map.of(),
        null);
  }

  private Sowing add(Trays trays, double now, double winter, @Nullable LocalDate readyBy) {
    Sowing sowing = next();
    double error = now == 1 || now == 0 ? 0 : 0.03;
    sowings.add(
        new SowingNow(
            sowing,
            0.9,
            trays,
            forecast(sowing, now, now - error, now + error, readyBy),
            forecast(sowing, winter, winter, winter, null)));
    return sowing;
  }

  private Advice advise(
      Kind kind, @Nullable Sowing sowing, int trays, int byDay, double gain, Difference others) {
    Advice one =
        new Advice(
            kind,
            sowing,
            sowing == null ? List.of("3 of a") : List.of(),
            sowing == null ? List.of("b") : List.of(),
            trays,
            byDay,
            sowing == null ? null : new Chance(0.93, 0.9, 0.95),
            difference(gain, 0.05),
            others,
            kind == Kind.BUY_IN ? 271.0 : null);
    advice.add(one);
    return one;
  }

  private static Difference difference(double mean, double halfWidth) {
    return new Difference(mean, halfWidth, halfWidth / 2, 0.5, 2.0, 100);
  }

  private NowAnswer answer(@Nullable LastTime last) throws Exception {
    SeasonNow now =
        new SeasonNow(
            forecast, forecast, 0.9, sowings, advice, notHelped, advice.isEmpty() ? 0 : 4);
    return new NowAnswer(
        now,
        AskingNow.fortnight(forecast.scenario(), SETTINGS),
        new ForecastAnswer(forecast),
        last);
  }

  private String told() throws Exception {
    return told(null);
  }

  private String told(@Nullable LastTime last) throws Exception {
    return String.join(" ", answer(last).headlines().lines()).replaceAll("\\s+", " ");
  }

  private String page() throws Exception {
    return requireNonNull(answer(null).files("1").get("now.html")).replace('\u00a0', ' ');
  }

  private static final Difference NONE = Difference.NONE;

  @Test
  void theVerdictComesFirstWithFourFigures() throws Exception {
    add(BEGUN, 1, 0.8, null);
    add(BEGUN, 0.6, 0.8, null);
    add(BEGUN, 0, 0.8, null);
    assertThat(told())
        .startsWith(
            "On 11 March 1 of 3 sowings is safe, 1 more than in winter; 1 at risk, 1 lost.");
    sowings.clear();
    add(BEGUN, 1, 1, null);
    assertThat(told())
        .startsWith("On 11 March 1 of 1 sowing is safe, as many as in winter: none is at risk.");
  }

  @Test
  void theTablesGiveEachFigureItsError() {
    add(BEGUN, 0.6, 0.8, null);
    SowingNow one = sowings.get(0);
    sowings.set(
        0,
        new SowingNow(
            one.sowing(), 0.9, BEGUN, one.now(), forecast(one.sowing(), 0.8, 0.77, 0.83, null)));
    Sheet.Row row = NowTables.SOWINGS.sheet("", "", sowings).rows().get(0);
    assertThat(row.cells().subList(1, 5))
        .extracting(cell -> cell.text() + "|" + cell.below())
        .containsExactly(
            "60 %|57–63 %", "80 %|77–83 %", "1,804 ± 10|1,750–1,850", "1,804 ± 10|1,750–1,850");
    assertThat(AdviceWords.othersAndError(advise(Kind.BUY_IN, one.sowing(), 0, NO_DAY, 0.1, NONE)))
        .isEqualTo("none");
    assertThat(
            AdviceWords.othersAndError(
                advise(Kind.BUY_IN, one.sowing(), 0, NO_DAY, 0.1, difference(-0.73, 0.14))))
        .isEqualTo("0.73 ± 0.14 fewer");
  }

  /**
   * What is known of the days until today is the same in every spring, so all doubt is of those
   * after.
   */
  @Test
  void theDaysFullFromTodayOnHaveTheErrorOfTheWholeSeasons() {
    Stat season = Stats.of(12.5, 0.5, 11, 12, 14);
    List<DayUse> days = new ArrayList<>();
    for (int d = 0; d < 40; d++) {
      days.add(new DayUse(d, d, d, d + 2, d < 3 ? 1 : d < 10 ? 0 : 0.3, 0));
    }
    Stat full = requireNonNull(PlaceNow.fullFrom(10, days, season));
    assertThat(full.mean()).isCloseTo(9.5, within(1e-9));
    assertThat(Words.estimate(full)).isEqualTo("9.50 ± 0.98");
    days.set(5, new DayUse(1, 1, 1, 1, 0.4, 0));
    assertThat(PlaceNow.fullFrom(10, days, season)).isNull();
  }

  @Test
  void sowingAgainIsToldAsAGrowerSaysIt() throws Exception {
    Sowing a = add(BEGUN, 0.64, 0.9, null);
    advise(Kind.SOW_AGAIN, a, 2, 14, 0.29, difference(-0.73, 0.14));
    assertThat(told())
        .contains(
            " a: sow 2 trays again on 11 March, and its plants are on time in 93 springs of 100; as it"
                + " stands, in 64 springs of 100. On 15 March 2 trays are still enough. On average 0.7"
                + " fewer of the other sowings have their plants on time, for lack of room.")
        .doesNotContain("±", "Until", "more piece");
  }

  @Test
  void whatIsTooLateTomorrowOrTooLittleIsSaid() throws Exception {
    Sowing a = add(BEGUN, 0.64, 0.9, null);
    advise(Kind.SOW_AGAIN, a, 1, 10, 0.29, NONE);
    assertThat(told()).contains("Tomorrow 1 tray is no longer enough.").doesNotContain("the other");
    advice.clear();
    advise(Kind.SOW_AGAIN, a, 1, NO_DAY, 0.1, difference(-0.04, 0.01));
    assertThat(told())
        .contains("That is still short of its goal, 90 %.")
        .doesNotContain("the other");
  }

  @Test
  void theMostUsefulIsToldAndAllAreInTheTableBySowing() throws Exception {
    Sowing a = add(BEGUN, 0, 0.9, null);
    Sowing b = add(BEGUN, 0.64, 0.9, null);
    advise(Kind.BUY_IN, a, 713, NO_DAY, 0.91, NONE);
    advise(Kind.GIVE_UP, null, 3, NO_DAY, 0.9, NONE);
    advise(Kind.SOW_AGAIN, b, 2, 14, 0.29, difference(-0.73, 0.14));
    assertThat(told())
        .contains(
            "The most useful is for a: buy in 713 plants, and its plants are on time in 93 springs of 100; as"
                + " it stands, in no spring. 2 more pieces of advice are on the page.");
    assertThat(page().replaceAll("\\s*<[^>]+>\\s*", "|").replaceAll("[|]+", "|"))
        .contains(
            "|a|buy in 713 plants|0 → 93 %|90–95 %|none|",
            "|several|give up 3 trays that are not needed (3 of a)|it helps b|–|0.90 ± 0.05 more|",
            "|b|sow 2 trays again on 11 March|on 15 March 2 trays are still enough|64 → 93"
                + " %|90–95 %|0.73 ± 0.14 fewer|");
  }

  @Test
  void whatHelpsSeveralIsToldInSowings() throws Exception {
    add(BEGUN, 0.64, 0.9, null);
    advise(Kind.GIVE_UP, null, 3, NO_DAY, 1.2, NONE);
    assertThat(told())
        .contains(
            " Give up 3 trays that are not needed (3 of a): on average 1.2 more sowings have their"
                + " plants on time. It helps b.");
  }

  @Test
  void whatNothingHelpsSaysWhenItIsThere() throws Exception {
    notHelped.add(add(BEGUN, 0.6, 0.9, Farms.day(59)));
    notHelped.add(add(BEGUN, 0.1, 0.9, null));
    assertThat(told())
        .contains(
            "Nothing that was tried helps a: in 9 springs of 10 its plants are there by 29 April, 9"
                + " days late; b: its plants are not there in 9 springs of 10 by the end of the"
                + " season.")
        .doesNotContain("never");
  }

  @Test
  void whatIsNotSownYetIsLeftToPlanAndLatest() throws Exception {
    add(NOT_BEGUN, 0.6, 0.6, null);
    assertThat(told())
        .contains("Not sown yet, and short as planned: a. Ask for a better plan.")
        .doesNotContain("Nothing that was tried");
  }

  @Test
  void askedTwiceInADayNothingHasChangedAndNothingIsSaid() throws Exception {
    add(BEGUN, 0.6, 0.9, null);
    assertThat(told(new LastTime(Farms.day(10), Map.of("a", 0.6)))).doesNotContain("Since");
    assertThat(told(new LastTime(Farms.day(3), Map.of("a", 0.6))))
        .contains("Since it was asked for 4 March: no sowing's chance has changed by 5 points");
    assertThat(told(new LastTime(Farms.day(10), Map.of("a", 0.8))))
        .contains("Since it was asked for 11 March: a from 80 % to 60 %.");
  }

  @Test
  void ofManyThatChangedTheFirstAreToldMostFirst() throws Exception {
    for (double now : new double[] {0.6, 0.9, 0.5, 0.8, 0.3}) {
      add(BEGUN, now, 0.9, null);
    }
    Map<String, Double> before = Map.of("a", 0.7, "b", 0.1, "c", 0.7, "d", 0.74, "e", 0.9);
    assertThat(told(new LastTime(Farms.day(3), before)))
        .contains(
            "b from 10 % to 90 %, e from 90 % to 30 %, c from 70 % to 50 % and 2 more sowings.");
  }

  @Test
  void traysThatShouldHaveBeenSownAreToldAsAForgottenRow() throws Exception {
    add(BEGUN, 1, 1, null);
    assertThat(told()).doesNotContain("not in the log");
    add(new Trays(2, 1, 0, 0, 0, 0, 0, 0), 0.6, 0.9, null);
    assertThat(told())
        .contains(
            "1 tray should have been sown by now and is not in the log (b): taken as due today. Is a"
                + " row missing?");
    for (int i = 0; i < 3; i++) {
      add(new Trays(2, 2, 0, 0, 0, 0, 0, 0), 0.6, 0.9, null);
    }
    assertThat(told()).contains("7 trays should have been sown by now").contains("(b, c, d and e)");
    add(new Trays(2, 2, 0, 0, 0, 0, 0, 0), 0.6, 0.9, null);
    assertThat(told()).contains("(b, c, d and 2 more)");
  }

  @Test
  void thePageSaysItsDayAndWholePlants() throws Exception {
    add(BEGUN, 1, 0.9, null);
    String page = page();
    assertThat(page)
        .contains("<h1>test, on 11 March 2027</h1>")
        .contains("1,804 ± 10")
        .contains("1,750–1,850")
        .contains("goal, 90 %")
        .contains("class=\"slim\"")
        .doesNotContain("<dt>Sown</dt>", "100–100", "1,803.6", "Stands", "Pots fill");
    assertThat(page.indexOf("id=\"advice\"")).isLessThan(page.indexOf("<svg"));
  }

  /** Arrows and shapes of Windows Glyph List 4, which Arial, Helvetica and Liberation have all. */
  @Test
  void theMarksOfStandingAreInAllCommonFonts() throws Exception {
    add(new Trays(0, 0, 0, 0, 0, 0, 2, 0), 1, 0.9, null);
    add(BEGUN, 1, 0.9, null);
    add(BEGUN, 0.5, 0.9, null);
    add(BEGUN, 0, 0.9, null);
    String page = page();
    assertThat(page).contains("planted", "safe", "at risk", "lost");
    assertThat(page.replaceAll("[\\x{0}-\\x{218F}→■□▪▫▬▲►▼◄◊○●◘◙◦]", "")).isEmpty();
  }
}

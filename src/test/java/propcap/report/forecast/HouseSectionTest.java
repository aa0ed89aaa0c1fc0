package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;
import propcap.report.forecast.HouseWeeks.PlaceWeeks;
import propcap.report.forecast.HouseWeeks.Week;
import propcap.report.kit.Templates;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;

class HouseSectionTest {
  private static final Forecast SPRING = Forecasts.spring();

  private static String page(Forecast forecast) {
    return ReportPage.html(forecast, "0.1.0");
  }

  private static PlaceWeeks place(String name) {
    return HouseWeeks.of(SPRING).places().stream()
        .filter(p -> p.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyOpenPlaceHasARowAndThoseOfAKindOneTogether() {
    assertThat(HouseWeeks.of(SPRING).places())
        .extracting(PlaceWeeks::name)
        .containsExactly("Mats", "Chamber", "House 1", "House 2", "all tables", "Yard");
  }

  @Test
  void theWeeksHoldEachDayOnceAndBeginOnAMonday() {
    for (PlaceWeeks place : HouseWeeks.of(SPRING).places()) {
      int next = 0;
      for (Week week : place.weeks()) {
        assertThat(week.first()).isEqualTo(next);
        assertThat(week.days()).isBetween(1, 7);
        next += week.days();
      }
      assertThat(next).isEqualTo(SPRING.scenario().season().days());
      assertThat(place.weeks().subList(1, place.weeks().size()))
          .allSatisfy(
              w ->
                  assertThat(SPRING.scenario().season().date(w.first()).getDayOfWeek().getValue())
                      .isEqualTo(1));
    }
  }

  @Test
  void aWeekIsAsFullAsItsFullestDay() {
    Occupancy house =
        SPRING.places().stream().filter(p -> p.name().equals("House 1")).findFirst().orElseThrow();
    for (Week week : place("House 1").weeks()) {
      List<Double> days =
          house.days().subList(week.first(), week.first() + week.days()).stream()
              .map(d -> d.p50())
              .toList();
      assertThat(days).contains(week.used()).allMatch(d -> d <= week.used());
    }
  }

  @Test
  void whatWouldNotFitStandsAboveTheLineAndNothingElse() {
    HouseSection house = HouseSection.of(SPRING);
    assertThat(house.rows())
        .filteredOn(r -> !r.tooMany().isEmpty())
        .extracting(HouseSection.Row::name)
        .containsExactly("Chamber", "all tables", "Yard");
    for (HouseSection.Row row : house.rows()) {
      assertThat(row.tooMany())
          .allMatch(
              b ->
                  Math.abs(Double.parseDouble(b.y()) + Double.parseDouble(b.height()) - row.line())
                      < 1);
      assertThat(row.used()).allMatch(b -> Double.parseDouble(b.y()) >= row.line() - 1);
      assertThat(row.used())
          .allMatch(
              b ->
                  Math.abs(Double.parseDouble(b.y()) + Double.parseDouble(b.height()) - row.foot())
                      < 0.11);
    }
  }

  @Test
  void theWeeksInWhichAPlaceIsFullAreMarkedOnItsLine() {
    HouseSection house = HouseSection.of(SPRING);
    for (HouseSection.Row row : house.rows()) {
      PlaceWeeks place = place(row.name());
      assertThat(row.fullWeeks())
          .as(row.name())
          .hasSize((int) place.weeks().stream().filter(w -> w.used() >= place.spaces()).count());
    }
    assertThat(house.rows())
        .anyMatch(row -> row.fullWeeks().isEmpty())
        .anyMatch(row -> !row.fullWeeks().isEmpty());
  }

  /** As in the picture of the moves: what stands there is in the heat, growing on, hardening. */
  @Test
  void aPlaceHasTheColourOfWhatStandsInIt() {
    assertThat(HouseSection.of(SPRING).rows())
        .extracting(HouseSection.Row::colour)
        .containsExactly(
            hex(Stage.HEAT),
            hex(Stage.HEAT),
            hex(Stage.TABLE),
            hex(Stage.TABLE),
            hex(Stage.TABLE),
            hex(Stage.HARDENING));
  }

  private static String hex(Stage stage) {
    Color c = stage.colour();
    return String.format(Locale.ROOT, "#%02x%02x%02x", c.getRed(), c.getGreen(), c.getBlue());
  }

  @Test
  void theWordsSayWhatThePictureShows() {
    assertThat(HouseSection.of(SPRING).words())
        .contains("Chamber, room for 60: 5 days full; ", "with endless room 210 would stand there");
    assertThat(HouseSection.of(SPRING).rows())
        .filteredOn(r -> r.name().equals("House 1"))
        .allSatisfy(r -> assertThat(r.full()).isEqualTo("38 days full"));
  }

  @Test
  void eachPlaceLeadsToItsOwnChart() {
    String page = page(SPRING);
    List<String> links =
        Pattern.compile("href=\"#([^\"]*)\"").matcher(page).results().map(m -> m.group(1)).toList();
    assertThat(links).hasSize(6).doesNotHaveDuplicates();
    HouseSection house = HouseSection.of(SPRING);
    for (HouseSection.Row row : house.rows()) {
      assertThat(page)
          .containsPattern(
              "<figure id=\""
                  + row.link()
                  + "\">\\s*<figcaption><strong>Tray spaces in use by day: "
                  + Pattern.quote(row.name()));
    }
  }

  @Test
  void itStandsBeforeAllSectionsAndFitsAnyWidth() {
    String page = page(SPRING);
    assertThat(page.indexOf("id=\"house\"")).isBetween(0, page.indexOf("id=\"plants\""));
    String svg = Templates.fill("house.jte", HouseSection.of(SPRING));
    assertThat(svg).contains("width=\"100%\"").doesNotContain("viewBox", "min-width", "style=");
    assertThat(Pattern.compile("<rect[^>]* x=\"([^\"]*)\"").matcher(svg).results())
        .isNotEmpty()
        .allMatch(m -> m.group(1).endsWith("%"));
  }

  @Test
  void aBareHouseHasItsRowAndNoBar() {
    HouseSection house = HouseSection.of(Forecasts.bare());
    assertThat(house.rows()).hasSize(1);
    assertThat(house.rows().get(0).full()).isEqualTo("never full");
    assertThat(house.rows().get(0).used()).isEmpty();
  }
}

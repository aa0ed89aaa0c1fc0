package propcap.report.forecast;

import java.util.List;
import propcap.report.kit.Fact;
import propcap.report.kit.Templates;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;

/** The whole report, as text and charts that its template only has to set. */
public record ReportPage(
    String scenario,
    List<Fact> facts,
    String version,
    VerdictSection verdict,
    HouseSection house,
    PlantsSection plants,
    RoomSection room,
    WaitingSection waiting,
    LossSection losses,
    MovesSection moves,
    HandsSection hands) {

  /** The report as one HTML file that needs no other. */
  static String html(Forecast forecast, String version) {
    return Templates.withoutLooseErrors(Templates.fill("report.jte", of(forecast, version)));
  }

  private static ReportPage of(Forecast forecast, String version) {
    return new ReportPage(
        forecast.scenario().name(),
        facts(forecast),
        version,
        VerdictSection.of(forecast),
        HouseSection.of(forecast),
        PlantsSection.of(forecast),
        RoomSection.of(forecast),
        WaitingSection.of(forecast),
        LossSection.of(forecast),
        MovesSection.of(forecast),
        HandsSection.of(forecast));
  }

  private static List<Fact> facts(Forecast forecast) {
    return Fact.of(forecast.scenario(), Words.count(forecast.seasons()), forecast.settings());
  }
}

package propcap.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.util.List;
import propcap.farm.Season;
import propcap.study.Forecast;

/** The whole report, as text and charts that its template only has to set. */
public record ReportPage(
    String scenario,
    List<Fact> facts,
    String version,
    PlantsSection plants,
    RoomSection room,
    WaitingSection waiting,
    LossSection losses,
    MovesSection moves) {

  private static final TemplateEngine TEMPLATES =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, ReportPage.class.getClassLoader(), "propcap.report.pages");

  /** A line of what was run, such as its seed. */
  public record Fact(String name, String value) {}

  /** The report as one HTML file that needs no other. */
  static String html(Forecast forecast, String version) {
    StringOutput out = new StringOutput();
    TEMPLATES.render("report.jte", of(forecast, version), out);
    return out.toString();
  }

  private static ReportPage of(Forecast forecast, String version) {
    return new ReportPage(
        forecast.scenario().name(),
        facts(forecast),
        version,
        PlantsSection.of(forecast),
        RoomSection.of(forecast),
        WaitingSection.of(forecast),
        LossSection.of(forecast),
        MovesSection.of(forecast));
  }

  private static List<Fact> facts(Forecast forecast) {
    Season season = forecast.scenario().season();
    int years = forecast.scenario().weather().size();
    return List.of(
        new Fact(
            "Season", Dates.dayAndYear(season.start()) + " to " + Dates.dayAndYear(season.end())),
        new Fact(
            "Sown",
            Words.plural(forecast.sowings().size(), "sowing")
                + ", "
                + Words.plural(forecast.scenario().trays(), "tray")),
        new Fact(
            "Springs tried",
            Words.count(forecast.seasons())
                + ", each in the weather of one of "
                + Words.plural(years, "recorded year")),
        new Fact("Seed of all luck", Long.toString(forecast.settings().seed())));
  }
}

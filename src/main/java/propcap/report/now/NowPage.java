package propcap.report.now;

import java.util.List;
import propcap.farm.Season;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Words;
import propcap.study.SeasonNow;

/** The page of a season on a day within it. */
final class NowPage {
  private NowPage() {}

  static AnswerPage of(NowAnswer answer, String version) {
    SeasonNow now = answer.now();
    NowWords words = new NowWords(now);
    Season season = now.now().scenario().season();
    return new AnswerPage(
        now.now().scenario().name(),
        "What now?",
        Fact.of(now.now().scenario(), Words.count(now.now().seasons()), now.now().settings()),
        version,
        List.of(
            new Part(
                "today",
                "The season on this day",
                words.told(answer.last()),
                words.around(),
                List.of(
                    new Part.Figure(
                        "Each sowing's chance, in winter and now.",
                        "Hollow: in winter. Filled: now. Left of the line of the goal it is short.",
                        ChancesChart.of(now, "chances"))),
                List.of()),
            new Part(
                "advice",
                "What can still be done",
                words.all(),
                List.of(tried(now)),
                List.of(),
                List.of()),
            new Part(
                "sowings",
                "Sowing by sowing",
                List.of(),
                List.of(
                    NowTables.SOWINGS.sheet(
                        "How each stands.",
                        "Safe: its plants are on time in as many springs as its goal. Bold: short of"
                            + " it.",
                        now.sowings()))),
            new Part(
                "places",
                "The places from today on",
                List.of(),
                List.of(
                    NowTables.places(season)
                        .sheet(
                            "What stands where, and when it is full.",
                            "Pots fill as many spaces as they have trays.",
                            NowTables.PlaceNow.of(now)))),
            new Part(
                "work",
                "The coming fortnight",
                List.of(),
                List.of(
                    NowTables.work(season)
                        .sheet(
                            "Likely work, by day.",
                            "Whole trays on their likely days, by the log's own words: whoever has"
                                + " done it writes the row.",
                            NowTables.Job.of(answer.work(), now.now().scenario().today()))))),
        List.of(AnswerPage.SPRING, AnswerPage.PLUS_MINUS));
  }

  private static String tried(SeasonNow now) {
    return now.tried() == 0
        ? "Nothing is short, or nothing was to be tried."
        : "Each was tried by itself, on the same springs as doing nothing, and is told from "
            + Words.plural(now.tried(), "spring")
            + " other than those on which it was found. Two of them together may help less than"
            + " both.";
  }
}

package propcap.report.now;

import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Dates;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Words;
import propcap.study.now.SeasonNow;

/** The page of a season on a day within it. */
final class NowPage {
  private NowPage() {}

  static AnswerPage of(NowAnswer answer, String version) {
    SeasonNow now = answer.now();
    NowWords words = new NowWords(now);
    Scenario scenario = now.now().scenario();
    Season season = scenario.season();
    return new AnswerPage(
        scenario.name() + ", on " + Dates.dayAndYear(scenario.today()),
        "What now?",
        Fact.within(scenario, Words.count(now.now().seasons()), now.now().settings()),
        version,
        List.of(
            new Part(
                "today",
                "The season on this day",
                words.told(answer.last()),
                Stream.of(words.doubts(), words.around()).flatMap(List::stream).toList(),
                List.of(),
                List.of()),
            new Part(
                "advice",
                "What can still be done",
                new AdviceWords(now).told(),
                List.of(tried(now)),
                List.of(),
                List.of(
                    NowTables.advice(now)
                        .sheet(
                            "All that helps, sowing by sowing.",
                            "The most useful first. The others: so many more or fewer of the other"
                                + " sowings have their plants on time; with several, of all.",
                            now.advice()))),
            new Part(
                "sowings",
                "Sowing by sowing",
                List.of(),
                List.of(),
                List.of(
                    new Part.Figure(
                        "Each sowing's chance, in winter and now.",
                        "Left of the dashed line, the goal, it is short.",
                        ChancesChart.of(now, "chances"))),
                List.of(
                    NowTables.SOWINGS.sheet(
                        "How each stands.",
                        "Safe: its plants are on time in as many springs as its goal. Bold: short of"
                            + " it. Below a chance its 95 % interval, below the plants on time what 8"
                            + " springs of 10 have.",
                        now.sowings()))),
            new Part(
                "places",
                "The places from today on",
                List.of(),
                List.of(
                    PlaceNow.table(season)
                        .sheet(
                            "What is taken, and when it is full.",
                            "Below a mean what 8 springs of 10 have. A tray that was potted on takes a space for each"
                                + " tray of pots that it fills.",
                            PlaceNow.of(now)))),
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
                            NowTables.Job.of(answer.work(), scenario.today()))))),
        List.of(AnswerPage.SPRING));
  }

  private static String tried(SeasonNow now) {
    return now.tried() == 0
        ? "Nothing was tried."
        : "Each was tried by itself, on the same springs as doing nothing, and is told from "
            + Words.plural(now.tried(), "spring")
            + " other than those on which it was found. Two of them together may help less than"
            + " both.";
  }
}

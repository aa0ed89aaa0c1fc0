package propcap.report.now;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Part;
import propcap.report.kit.Words;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.study.SeasonNow;
import propcap.study.WorkCalendar;

/**
 * What now, and what can still be done.
 *
 * @param work of the coming fortnight, and of what follows
 * @param forecast of the whole season, whose files stand beside this answer's own
 * @param last what was answered before; null: it is asked for the first time
 */
public record NowAnswer(SeasonNow now, WorkCalendar work, Answer forecast, @Nullable LastTime last)
    implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "now",
          "-now",
          "now.json",
          "scenario today advice",
          "now.html now.csv now-places.csv report.html summary.json sowings.csv places.csv"
              + " losses.csv hands.csv seasons.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  private List<String> sentences() {
    NowWords words = new NowWords(now);
    return Stream.of(
            Stream.of(words.verdict(), words.plants()),
            words.since(last).stream(),
            now.advice().stream().map(words::advice),
            words.notHelped().stream(),
            words.forgotten().stream(),
            words.room().stream())
        .flatMap(s -> s)
        .toList();
  }

  @Override
  public List<String> headlines() {
    NowWords words = new NowWords(now);
    Lines lines = new Lines();
    lines.add(words.verdict()).add(words.plants());
    words.since(last).ifPresent(lines::add);
    words.forgotten().ifPresent(lines::add);
    words.shortAdvice().ifPresent(lines::add);
    words.notHelped().ifPresent(lines::add);
    words.room().ifPresent(lines::add);
    return lines.endingWith(
        now.now().scenario().name()
            + Fact.run(now.now().seasons(), "", now.now().settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Season season = now.now().scenario().season();
    Map<String, String> files = new LinkedHashMap<>();
    files.put("now.html", page(version).html());
    files.put(
        kind().file(),
        Json.text(
            Head.of(now.now().scenario(), version, now.now().seasons(), now.now().settings()),
            new Members(
                now.now().scenario().today().toString(),
                now.goal(),
                sentences(),
                NowTables.SOWINGS.objects(now.sowings()),
                NowTables.places(season).objects(NowTables.PlaceNow.of(now)),
                NowTables.ADVICE.objects(now.advice()),
                now.tried())));
    files.put("now.csv", NowTables.SOWINGS.csv(now.sowings()));
    files.put("now-places.csv", NowTables.places(season).csv(NowTables.PlaceNow.of(now)));
    files.putAll(forecast.files(version));
    return files;
  }

  private record Members(
      String today,
      double goal,
      List<String> verdicts,
      List<?> sowings,
      List<?> places,
      List<?> advice,
      int advisedFromSprings) {}

  @Override
  public AnswerPage page(String version) {
    NowWords words = new NowWords(now);
    Season season = now.now().scenario().season();
    List<String> verdicts = new ArrayList<>(List.of(words.verdict(), words.plants()));
    words.since(last).ifPresent(verdicts::add);
    List<String> advice = new ArrayList<>(now.advice().stream().map(words::advice).toList());
    words.notHelped().ifPresent(advice::add);
    List<String> told = new ArrayList<>(words.forgotten().stream().toList());
    words.room().ifPresent(told::add);
    return new AnswerPage(
        now.now().scenario().name(),
        "What now?",
        Fact.of(now.now().scenario(), Words.count(now.now().seasons()), now.now().settings()),
        version,
        List.of(
            new Part(
                "verdict",
                "The season on this day",
                verdicts,
                told,
                List.of(
                    new Part.Figure(
                        "Each sowing's chance, in winter and now.",
                        "Hollow: in winter. Filled: now. Left of the line of the goal it is short.",
                        ChancesChart.of(now, "chances"))),
                List.of()),
            new Part(
                "advice",
                "What can still be done",
                advice.isEmpty() && now.tried() == 0 ? List.of() : advice,
                now.tried() == 0
                    ? List.of("Nothing is short, or nothing was asked to be tried.")
                    : List.of(
                        "Each was tried by itself, on the same springs as doing nothing, and is told"
                            + " from "
                            + Words.plural(now.tried(), "spring")
                            + " other than those on which it was found."),
                List.of(),
                List.of()),
            new Part(
                "sowings",
                "Sowing by sowing",
                List.of(),
                List.of(),
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
                List.of(),
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
                List.of(),
                List.of(),
                List.of(
                    NowTables.work(season)
                        .sheet(
                            "Likely work, by day.",
                            "Whole trays on their likely days. Whoever does it ticks it, and writes"
                                + " it in the log.",
                            NowTables.Job.of(work, now.now().scenario().today()))))),
        List.of(AnswerPage.SPRING, AnswerPage.PLUS_MINUS));
  }
}

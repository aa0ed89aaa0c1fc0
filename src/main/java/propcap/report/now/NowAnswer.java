package propcap.report.now;

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
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.now.SeasonNow;
import propcap.study.work.WorkCalendar;

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

  @Override
  public Headlines headlines() {
    NowWords words = new NowWords(now);
    Lines lines = new Lines();
    words.told(last).forEach(lines::add);
    new AdviceWords(now).toldInShort().forEach(lines::add);
    words.around().forEach(lines::add);
    return lines.endingWith(
        now.now().scenario().name()
            + Fact.run(now.now().seasons(), "", now.now().settings().seed()));
  }

  @Override
  public Map<String, String> files(String version) {
    Season season = now.now().scenario().season();
    NowWords words = new NowWords(now);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("now.html", page(version).html());
    files.put(
        kind().file(),
        Json.text(
            Head.of(now.now().scenario(), version, now.now().seasons(), now.now().settings()),
            new Members(
                now.now().scenario().today().toString(),
                now.goal(),
                Stream.of(
                        words.told(last),
                        words.doubts(),
                        new AdviceWords(now).told(),
                        words.around())
                    .flatMap(List::stream)
                    .toList(),
                NowTables.SOWINGS.objects(now.sowings()),
                PlaceNow.table(season).objects(PlaceNow.of(now)),
                NowTables.advice(now).objects(now.advice()),
                now.tried())));
    files.put("now.csv", NowTables.SOWINGS.csv(now.sowings()));
    files.put("now-places.csv", PlaceNow.table(season).csv(PlaceNow.of(now)));
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
    return NowPage.of(this, version);
  }
}

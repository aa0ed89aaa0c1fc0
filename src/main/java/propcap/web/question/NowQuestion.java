package propcap.web.question;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import propcap.farm.Scenario;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.now.LastTime;
import propcap.report.now.NowAnswer;
import propcap.results.Answer;
import propcap.study.RunSettings;
import propcap.study.forecast.Safety;
import propcap.study.now.AskingNow;
import propcap.study.now.SeasonNow;
import propcap.web.question.QuestionForm.Field;
import propcap.web.question.QuestionRuns.QuestionRun;
import propcap.web.request.RefusedException;
import propcap.web.request.RequestFields;

/** What now, and what can still be done? It is asked of a season of which a log is kept. */
final class NowQuestion {
  static final QuestionForm FORM =
      new QuestionForm(
          "now",
          "What now, and what can still be done?",
          "Goes on from the day of the tab “Season so far”: what is planted, safe, at risk and lost,"
              + " beside the forecast of winter, the coming fortnight's work, and what would help.",
          new Field(
              "goal", "Safe if on time in, % of springs", Math.round(100 * Safety.DEFAULT_GOAL)),
          new Field(
              "advice",
              "Advice",
              "yes",
              List.of(
                  List.of("yes", "try what can still be done"),
                  List.of("no", "only how it goes on"))));

  private NowQuestion() {}

  static QuestionRun of(Scenario scenario, RequestFields asked) throws RefusedException {
    if (scenario.soFar() == null) {
      throw RefusedException.bad(
          "nothing is known of the season so far: keep a log, and look at a day of the season");
    }
    double goal = asked.number("goal", 1, 99) / 100.0;
    boolean isAdvised = !asked.text("advice").equals("no");
    return progress -> {
      RunSettings run = Outlook.settings(scenario, RunSettings.DEFAULT_SEASONS);
      SeasonNow now = AskingNow.ask(scenario, run, goal, isAdvised, progress);
      return new QuestionRuns.Answered(
          new NowAnswer(
              now, AskingNow.fortnight(scenario, run), new ForecastAnswer(now.now()), null));
    };
  }

  /**
   * The answer with what has changed since the one that is saved, if it is one to this question.
   */
  static Answer sinceSaved(Answer answer, Path results) throws IOException {
    if (!(answer instanceof NowAnswer now) || !NowAnswer.KIND.isIn(results)) {
      return answer;
    }
    String saved = Files.readString(results.resolve(NowAnswer.KIND.file()));
    return new NowAnswer(now.now(), now.work(), now.forecast(), LastTime.of(saved).orElse(null));
  }
}

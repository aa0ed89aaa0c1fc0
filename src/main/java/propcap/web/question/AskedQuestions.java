package propcap.web.question;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.PlanNeeds;
import propcap.results.Answer;
import propcap.results.ResultsFolder;
import propcap.web.desk.Desk;
import propcap.web.request.RefusedException;
import propcap.web.request.Reply;
import propcap.web.request.RequestFields;

/**
 * The questions that were asked, and their answers, until they are saved or others push them out.
 */
public final class AskedQuestions {
  private static final int MOST_KEPT = 12;

  private final Desk desk;
  private final Studies studies;
  private final Map<Long, KeptAnswer> answers = new LinkedHashMap<>();

  private record KeptAnswer(
      String question, Path scenario, Answer answer, Optional<Proposal> proposal) {}

  public AskedQuestions(Desk desk, Studies studies) {
    this.desk = desk;
    this.studies = studies;
  }

  /** Asks about a scenario on the desk; comparing is always with the one that was opened. */
  public JsonObject ask(RequestFields asked) throws RefusedException {
    String question = asked.text("question");
    boolean isAboutAll = question.equals("compare");
    List<Path> files = isAboutAll ? desk.scenarios() : List.of(desk.shown(asked.text("file")));
    List<PlanNeeds> plans = new ArrayList<>();
    for (Path file : files) {
      Optional<PlanNeeds> plan =
          desk.reading(file)
              .needs()
              .filter(n -> n.needs().isEmpty() || Questions.findsWhatIsEmpty(question));
      plans.add(
          plan.orElseThrow(
              () ->
                  RefusedException.bad(
                      "mend the faults in " + desk.folder().name(file) + " first")));
    }
    QuestionRuns.QuestionRun asking = Questions.of(question, plans, asked);
    // The id is known only after the study is in the line, where it may run at once.
    long[] id = new long[1];
    synchronized (this) {
      id[0] =
          studies
              .add(
                  question,
                  false,
                  progress -> {
                    QuestionRuns.Answered answered = asking.answer(progress);
                    Path of = files.get(0);
                    Answer answer = sinceSaved(answered.answer(), of);
                    keep(id, new KeptAnswer(question, of, answer, answered.proposal()));
                  })
              .id();
    }
    JsonObject json = new JsonObject();
    json.addProperty("id", id[0]);
    return json;
  }

  private Answer sinceSaved(Answer answer, Path scenario) {
    try {
      return NowQuestion.sinceSaved(answer, desk.folder().results(scenario, answer.kind()));
    } catch (IOException | RefusedException e) {
      // It is answered all the same; that it cannot be saved there is told when that is asked for.
      return answer;
    }
  }

  private synchronized void keep(long[] id, KeptAnswer answer) {
    answers.put(id[0], answer);
    if (answers.size() > MOST_KEPT) {
      answers.remove(oldest());
    }
  }

  /** The oldest answer whose question has been answered again since: each question's last stays. */
  private long oldest() {
    Map<String, Long> last = new HashMap<>();
    answers.forEach((id, kept) -> last.put(kept.question(), id));
    return answers.keySet().stream()
        .filter(id -> !last.containsValue(id))
        .findFirst()
        .orElseGet(() -> answers.keySet().iterator().next());
  }

  private synchronized KeptAnswer kept(long id) throws RefusedException {
    KeptAnswer kept = answers.get(id);
    if (kept == null) {
      throw new RefusedException(404, "there is no such answer");
    }
    return kept;
  }

  /**
   * An answer as the page shows it.
   *
   * @param basis what it rests on
   * @param proposal what it would be called beside the plan; null where it proposes nothing
   */
  public record AnswerShown(
      long id, String basis, String html, List<String> files, @Nullable String proposal) {}

  public AnswerShown answer(long id) throws RefusedException {
    KeptAnswer kept = kept(id);
    Answer answer = kept.answer();
    return new AnswerShown(
        id,
        answer.headlines().basis(),
        answer.html(),
        answer.kind().files(),
        kept.proposal().map(Proposal::title).orElse(null));
  }

  /**
   * Puts what an answer proposes beside the plan.
   *
   * @return the new scenario's file
   */
  public String putBeside(long id) throws IOException, RefusedException {
    KeptAnswer kept = kept(id);
    Proposal proposal = proposal(kept);
    return desk.addWhatIf(proposal.title(), kept.scenario(), proposal::write);
  }

  /** Writes what an answer proposes into the scenario of which was asked, in one step. */
  public void take(long id) throws IOException, RefusedException {
    KeptAnswer kept = kept(id);
    desk.change(desk.folder().name(kept.scenario()), desk.version(), proposal(kept)::write);
  }

  private static Proposal proposal(KeptAnswer kept) throws RefusedException {
    return kept.proposal()
        .orElseThrow(() -> RefusedException.bad("this answer proposes no other plan"));
  }

  /** A file of an answer, as it would be written. */
  public Reply file(long id, String name, String version) throws RefusedException {
    String text = kept(id).answer().files(version).get(name);
    if (text == null) {
      throw new RefusedException(404, "the answer has no file " + name);
    }
    return Reply.document(name, text);
  }

  /** The answers that are kept, the newest first, each by its number. */
  public synchronized List<Map.Entry<Long, Answer>> all() {
    List<Map.Entry<Long, Answer>> all = new ArrayList<>();
    answers.forEach((id, kept) -> all.add(0, Map.entry(id, kept.answer())));
    return all;
  }

  /** Writes an answer into the results beside the scenario. */
  public List<Path> save(long id, String version) throws IOException, RefusedException {
    KeptAnswer kept = kept(id);
    try (ResultsFolder results = desk.folder().open(kept.scenario(), kept.answer().kind())) {
      return results.write(kept.answer().files(version));
    }
  }
}

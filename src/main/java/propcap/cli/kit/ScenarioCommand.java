package propcap.cli.kit;

import java.nio.file.Path;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.files.text.FaultsException;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.study.BadQuestionException;

/** A question about one scenario of which all is written. */
public abstract class ScenarioCommand<T extends Answer> extends NeedsCommand<T> {
  protected ScenarioCommand(AnswerKind kind) {
    super(kind);
  }

  @Override
  protected final PlanNeeds read(Scenarios reading, Path scenario) throws FaultsException {
    return PlanNeeds.none(reading.read(scenario));
  }

  @Override
  protected final RunOptions.Question<T> question(PlanNeeds needs) throws BadQuestionException {
    return question(needs.scenario());
  }

  /** What is asked, looked at before anything is written. */
  protected abstract RunOptions.Question<T> question(Scenario scenario) throws BadQuestionException;
}

package propcap.cli.question;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import propcap.cli.kit.NeedsCommand;
import propcap.cli.kit.RunOptions;
import propcap.cli.kit.Scenarios;
import propcap.farm.PlanNeeds;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.report.review.ReviewAnswer;
import propcap.study.review.Reviewing;

/** What came, and what had been forecast? */
@Command(
    name = "review",
    description =
        "Looks back on a season, at its end or on any day: compares the forecasts of winter and of"
            + " each first of a month with what came by the log, and says which numbers were most"
            + " wrong.")
public final class ReviewCommand extends NeedsCommand<ReviewAnswer> {
  private Path file = Path.of("SCENARIO");
  private Optional<Path> log = Optional.empty();

  ReviewCommand() {
    super(ReviewAnswer.KIND);
  }

  @Override
  protected PlanNeeds read(Scenarios reading, Path scenario) throws FaultsException {
    ScenarioReader.Reading read = reading.reading(scenario);
    file = scenario;
    log = read.log();
    return PlanNeeds.none(read.sound());
  }

  @Override
  protected RunOptions.Question<ReviewAnswer> question(PlanNeeds needs) {
    String its = log.map(Path::toString).orElse("LOG");
    return (run, progress) ->
        new ReviewAnswer(Reviewing.review(needs.scenario(), run, progress), its, file.toString());
  }

  @Override
  protected int mostSeasons() {
    return Reviewing.DEFAULT_SEASONS;
  }
}

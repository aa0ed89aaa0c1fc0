package propcap.web.question;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.report.PageWords;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.forecast.ForecastAnswer;
import propcap.results.Answer;
import propcap.results.ResultsFolder;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.now.CheckingLog;
import propcap.study.statistics.Difference;
import propcap.web.desk.Desk;
import propcap.web.request.RefusedException;
import propcap.web.request.Reply;

/**
 * The forecast beside the plan, and with it what differs where scenarios stand side by side. It is
 * made anew after each change, at first from few springs, so that it is there at once.
 */
public final class Outlook {
  /** So few that they are there at once; each weather year comes equally often all the same. */
  private static final int FIRST_SEASONS = 20;

  private static final int MORE_SEASONS = 100;

  private final Desk desk;
  private final Studies studies;
  private final int allSeasons;
  private final Runnable told;
  private @Nullable Study study;
  private long askedVersion;
  private @Nullable Path askedFile;
  private @Nullable Seen seen;
  private final BeforeChange before = new BeforeChange();

  /**
   * What is shown.
   *
   * @param version of the desk that it was made of
   * @param change what the last change did to the plants on time; null where there was none
   * @param comparison of all that stand side by side; null where there is one alone, or a fault
   * @param doubts which rows of the log may be missing or wrong
   */
  record Seen(
      long version,
      Path file,
      Forecast forecast,
      @Nullable Difference change,
      @Nullable Comparison comparison,
      List<String> doubts) {}

  /**
   * Beside what lies on a desk.
   *
   * @param allSeasons springs of a forecast that is whole
   * @param told when there is something else to be shown
   */
  public Outlook(Desk desk, Studies studies, int allSeasons, Runnable told) {
    this.desk = desk;
    this.studies = studies;
    this.allSeasons = allSeasons;
    this.told = told;
  }

  /**
   * Makes it anew for a scenario, in the place of the one that may be in the making; what is in the
   * making or done already is only told again.
   */
  public void ask(String name) throws RefusedException {
    if (isThere(name)) {
      told.run();
    }
  }

  /** Whether there is something of it to be shown; if not, it is in the making from now on. */
  private synchronized boolean isThere(String name) throws RefusedException {
    long version = desk.version();
    Path file = desk.shown(name);
    Study before = study;
    if (before != null) {
      boolean isSame = version == askedVersion && file.equals(askedFile);
      if (isSame && before.stage() != Study.Stage.STOPPED && before.stage() != Study.Stage.FAILED) {
        return seen != null && seen.version() == version && seen.file().equals(file);
      }
      before.stop();
    }
    askedVersion = version;
    askedFile = file;
    study = studies.add("forecast", true, progress -> make(version, file, progress));
    return false;
  }

  private void make(long version, Path file, DoubleConsumer progress)
      throws InterruptedException, BadQuestionException {
    Optional<Scenario> scenario = desk.reading(file).scenario();
    if (scenario.isEmpty()) {
      return;
    }
    List<Scenario> all = new ArrayList<>();
    for (Path each : desk.scenarios()) {
      desk.reading(each).scenario().ifPresent(all::add);
    }
    Optional<BadQuestionException> apart = apart(all);
    boolean isSideBySide =
        all.size() > 1 && all.size() == desk.scenarios().size() && apart.isEmpty();
    double trials = isSideBySide ? 1 + all.size() : 1;
    double done = 0;
    List<String> doubts = List.of();
    for (int seasons : List.of(FIRST_SEASONS, MORE_SEASONS, allSeasons)) {
      double share = seasons / (double) (FIRST_SEASONS + MORE_SEASONS + allSeasons);
      double start = done;
      Forecast forecast =
          Forecasting.forecast(
              scenario.get(),
              settings(scenario.get(), seasons),
              part -> progress.accept(start + part * share / trials));
      Difference change = before.take(file, forecast).orElse(null);
      show(new Seen(version, file, forecast, change, shownComparison(version), doubts));
      if (isSideBySide) {
        Comparison comparison =
            Comparing.compare(
                all,
                settings(all.get(0), seasons),
                part -> progress.accept(start + share * (1 + part * (trials - 1)) / trials));
        show(new Seen(version, file, forecast, change, comparison, doubts));
      }
      done += share;
      if (seasons == FIRST_SEASONS) {
        // The first figures need not wait for it.
        doubts = PageWords.doubts(CheckingLog.unlikely(scenario.get()));
      }
    }
    // The forecast is there; what cannot stand beside it is told.
    if (apart.isPresent()) {
      throw apart.get();
    }
  }

  private static Optional<BadQuestionException> apart(List<Scenario> all) {
    try {
      Comparing.checkCurrencies(all);
      return Optional.empty();
    } catch (BadQuestionException e) {
      return Optional.of(e);
    }
  }

  private synchronized @Nullable Comparison shownComparison(long version) {
    return seen != null && seen.version() == version ? seen.comparison() : null;
  }

  private void show(Seen next) throws InterruptedException {
    if (Thread.currentThread().isInterrupted()) {
      throw new InterruptedException();
    }
    synchronized (this) {
      seen = next;
    }
    told.run();
  }

  public static RunSettings settings(Scenario scenario, int seasons) {
    int threads = Runtime.getRuntime().availableProcessors();
    return new RunSettings(RunSettings.DEFAULT_SEED, seasons, null, threads)
        .inWholeBlocks(scenario);
  }

  private synchronized Seen seen() throws RefusedException {
    Seen shown = seen;
    if (shown == null) {
      throw new RefusedException(404, "there is no forecast yet");
    }
    return shown;
  }

  public ForecastShown inShort() throws RefusedException {
    Seen shown = seen();
    return ForecastShown.of(shown, desk.folder().name(shown.file()), allSeasons);
  }

  /** A section of the report, as HTML. */
  public String section(String word) throws RefusedException {
    Seen shown = seen();
    if (word.equals("side-by-side")) {
      Comparison comparison = shown.comparison();
      return comparison == null ? "" : new ComparisonAnswer(comparison).html();
    }
    for (ForecastAnswer.Section section : ForecastAnswer.Section.values()) {
      if (section.word().equals(word)) {
        return new ForecastAnswer(shown.forecast()).html(section);
      }
    }
    throw new RefusedException(404, "the report has no such section");
  }

  /** The forecast as it is told; empty where there is none yet. */
  public synchronized Optional<Answer> shown() {
    return Optional.ofNullable(seen).map(shown -> new ForecastAnswer(shown.forecast()));
  }

  /** A file of the forecast as it would be written, from as many springs as are tried by now. */
  public Reply file(String name, String version) throws RefusedException {
    String text = new ForecastAnswer(seen().forecast()).files(version).get(name);
    if (text == null) {
      throw new RefusedException(404, "the forecast has no file " + name);
    }
    return Reply.document(name, text);
  }

  /** Writes the forecast's report, as the command {@code run} does. */
  public List<Path> save(String version) throws IOException, RefusedException {
    Seen shown = seen();
    if (shown.forecast().seasons() < allSeasons) {
      throw RefusedException.bad("wait for the whole forecast first");
    }
    try (ResultsFolder results = desk.folder().open(shown.file(), ForecastAnswer.KIND)) {
      return results.write(new ForecastAnswer(shown.forecast()).files(version));
    }
  }
}

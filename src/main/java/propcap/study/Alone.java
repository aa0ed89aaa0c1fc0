package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import propcap.farm.Milestone;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.Choice.Setting;

/**
 * Each sowing by itself: what it brings with endless room, by its day and its trays. Sowings do not
 * then get in each other's way, so one run tells of one setting of every sowing.
 */
final class Alone {
  /** Days tried of each sowing's, evenly spaced. */
  private static final int DAYS = 13;

  /** Trays tried, as shares of the most that it may have. */
  private static final double[] SHARES = {0.25, 0.375, 0.5, 0.625, 0.75, 1};

  private static final int COARSE = 24;
  private static final int MOST_PASSES = 6;

  private final Scenario endless;
  private final List<Choice> choices;
  private final Aims aims;
  private final Worth worth;
  private final TrialSprings springs;
  private final SeasonPlan like;

  Alone(Scenario scenario, List<Choice> choices, Aims aims, Worth worth, TrialSprings springs) {
    this.endless = scenario.withEndlessRoom().withEndlessHands();
    this.choices = choices;
    this.aims = aims;
    this.worth = worth;
    this.springs = springs;
    this.like = new SeasonPlan(endless);
  }

  /**
   * One setting of one sowing, and its way through the places.
   *
   * @param score worth less what missing the goal costs, mean of the springs
   * @param met share of the springs in which its plants are on time
   * @param moved mean day of each move, by {@link Milestone}; NaN where no tray makes it
   * @param potTrays mean trays of pots that its trays become
   */
  record Response(Setting setting, double score, double met, List<Double> moved, double potTrays) {
    double day(Milestone move) {
      return moved.get(move.ordinal());
    }
  }

  /** By sowing: for each day tried, the best of the trays tried, in the order of the days. */
  List<List<Response>> byDay() throws InterruptedException {
    List<List<Response>> table = new ArrayList<>();
    choices.forEach(c -> table.add(new ArrayList<>()));
    for (int k = 0; k < DAYS; k++) {
      List<Response> best = new ArrayList<>();
      for (double share : SHARES) {
        int nth = k;
        List<Response> tried = run(s -> coarse(choices.get(s), nth, share), COARSE);
        best = best.isEmpty() ? tried : better(best, tried);
      }
      for (int s = 0; s < best.size(); s++) {
        List<Response> sofar = table.get(s);
        int day = best.get(s).setting().day();
        if (sofar.isEmpty() || sofar.get(sofar.size() - 1).setting().day() < day) {
          sofar.add(best.get(s));
        }
      }
    }
    return table;
  }

  private static Setting coarse(Choice choice, int nth, double share) {
    int last = choice.days().size() - 1;
    int day = choice.days().get(Math.round(last * nth / (float) (DAYS - 1)));
    return new Setting(day, Math.max(1, (int) Math.round(share * choice.mostTrays())), 0);
  }

  /** The best setting of each sowing: the best of a table, made better step by step. */
  List<Response> best(List<List<Response>> table) throws InterruptedException {
    List<Setting> start =
        table.stream()
            .map(r -> Collections.max(r, Comparator.comparingDouble(Response::score)))
            .map(Response::setting)
            .toList();
    List<Response> best = run(start::get, springs.count());
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      List<Response> before = best;
      for (Step step : Step.values()) {
        List<Response> now = best;
        best =
            better(
                best, run(s -> step.from(choices.get(s), now.get(s).setting()), springs.count()));
      }
      if (best.equals(before)) {
        break;
      }
    }
    return best;
  }

  /** A small change; a setting that has none of the kind stays as it is. */
  private enum Step {
    EARLIER,
    LATER,
    FEWER,
    MORE,
    ELSEWHERE;

    Setting from(Choice choice, Setting s) {
      int nth = choice.days().indexOf(s.day());
      return switch (this) {
        case EARLIER -> new Setting(choice.days().get(Math.max(0, nth - 1)), s.trays(), s.place());
        case LATER ->
            new Setting(
                choice.days().get(Math.min(choice.days().size() - 1, nth + 1)),
                s.trays(),
                s.place());
        case FEWER -> new Setting(s.day(), Math.max(1, s.trays() - 1), s.place());
        case MORE -> new Setting(s.day(), Math.min(choice.mostTrays(), s.trays() + 1), s.place());
        case ELSEWHERE -> new Setting(s.day(), s.trays(), (s.place() + 1) % choice.places().size());
      };
    }
  }

  private static List<Response> better(List<Response> one, List<Response> other) {
    return IntStream.range(0, one.size())
        .mapToObj(s -> other.get(s).score() > one.get(s).score() ? other.get(s) : one.get(s))
        .toList();
  }

  private List<Response> run(IntFunction<Setting> setting, int springsRun)
      throws InterruptedException {
    Draft draft = new Draft(IntStream.range(0, choices.size()).mapToObj(setting).toList());
    SeasonPlan plan = new SeasonPlan(draft.sown(endless, choices), like);
    int n = Math.min(springsRun, springs.count());
    List<double[][]> seasons = springs.run(plan, 0, n, this::read);
    List<Response> responses = new ArrayList<>();
    for (int s = 0; s < choices.size(); s++) {
      double[] sum = new double[SUMS];
      for (double[][] season : seasons) {
        for (int i = 0; i < SUMS; i++) {
          sum[i] += season[s][i];
        }
      }
      responses.add(response(s, draft.settings().get(s), sum, n));
    }
    return responses;
  }

  private static final int MOVES = Milestone.values().length;

  /** Worth, met, trays of pots; then trays and days of each move. */
  private static final int SUMS = 3 + 2 * MOVES;

  private double[][] read(SeasonOutcome season) {
    double[][] read = new double[choices.size()][SUMS];
    for (int s = 0; s < read.length; s++) {
      read[s][0] = worth.of(season, s);
      read[s][1] = worth.isMet(season, s) ? 1 : 0;
      read[s][2] = season.potTrays(s);
      for (Milestone move : Milestone.values()) {
        read[s][3 + move.ordinal()] = season.trays(s, move);
        read[s][3 + MOVES + move.ordinal()] = season.daySum(s, move);
      }
    }
    return read;
  }

  private Response response(int s, Setting setting, double[] sum, int n) {
    double met = sum[1] / n;
    Double[] days = new Double[MOVES];
    Arrays.setAll(days, m -> sum[3 + MOVES + m] / sum[3 + m]);
    return new Response(setting, sum[0] / n - aims.missing(s, met), met, List.of(days), sum[2] / n);
  }
}

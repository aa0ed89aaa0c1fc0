package propcap.study.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.plan.Job;
import propcap.plan.Timetable;
import propcap.study.plan.EndlessRoomSearch.Response;

/**
 * A plan made without chance: every sowing takes the mean days that it takes with endless room, and
 * all of them together must fit the heat, the tables and the hardening areas at what they lose the
 * least by. Where they do not fit, room is stretched until they do: how much is too much is for the
 * search to find out.
 */
final class TimetableStart {
  private static final int[] STRETCHED = {100, 110, 125, 150, 200, 300};

  /** Enough for a good timetable; the best would take long and be no better in a real spring. */
  private static final int MOST_DEAD_ENDS = 2_000;

  /** What all costs together stay below, so that their sum is an int. */
  private static final double COSTS = 1e8;

  private final Scenario scenario;
  private final List<Choice> choices;

  /** The places of each room of the timetable: all tables, all hardening areas, kinds of heat. */
  private final List<Set<String>> rooms = new ArrayList<>();

  TimetableStart(Scenario scenario, List<Choice> choices) {
    this.scenario = scenario;
    this.choices = choices;
    rooms.add(named(PlaceKind.TABLE));
    rooms.add(named(PlaceKind.HARDENING));
    Set<Set<String>> heats = new LinkedHashSet<>();
    choices.forEach(c -> heats.add(heatOf(c)));
    heats.stream().filter(h -> !h.isEmpty()).forEach(rooms::add);
  }

  private Set<String> named(PlaceKind kind) {
    Set<String> names = new LinkedHashSet<>();
    scenario.places().stream().filter(p -> p.kind() == kind).forEach(p -> names.add(p.name()));
    return names;
  }

  private Set<String> heatOf(Choice choice) {
    Set<String> heat = new LinkedHashSet<>(choice.places());
    heat.removeAll(rooms.get(0));
    return heat;
  }

  /** The first plan; empty where even stretched room did not do. */
  Optional<TrialPlan> of(List<List<Response>> table) {
    double most = table.stream().mapToDouble(r -> loss(r, worst(r))).filter(l -> l > 0).sum();
    double scale = most > 0 ? COSTS / most : 0;
    List<Job> jobs =
        IntStream.range(0, table.size()).mapToObj(s -> job(s, table.get(s), scale)).toList();
    for (int percent : STRETCHED) {
      List<Integer> spaces =
          rooms.stream().map(r -> Math.toIntExact(spaces(r) * (long) percent / 100)).toList();
      Optional<Timetable.Made> made =
          new Timetable(spaces, jobs, List.of()).make(Timetable.Aim.LEAST_COST, MOST_DEAD_ENDS);
      if (made.isPresent()) {
        List<Integer> options = made.get().options();
        return Optional.of(
            new TrialPlan(
                IntStream.range(0, options.size())
                    .mapToObj(s -> table.get(s).get(options.get(s)).setting())
                    .toList()));
      }
    }
    return Optional.empty();
  }

  private int spaces(Set<String> names) {
    return scenario.places().stream()
        .filter(p -> names.contains(p.name()))
        .mapToInt(Place::spaces)
        .sum();
  }

  private static Response worst(List<Response> responses) {
    return responses.stream().min(Comparator.comparingDouble(Response::score)).orElseThrow();
  }

  private static double loss(List<Response> responses, Response one) {
    double best = responses.stream().mapToDouble(Response::score).max().orElseThrow();
    return best - one.score();
  }

  private Job job(int s, List<Response> responses, double scale) {
    return new Job(
        choices.get(s).sowing().id(),
        responses.stream()
            .map(
                r ->
                    new Job.Option(
                        r.setting().day(),
                        (int) Math.round(scale * loss(responses, r)),
                        stays(s, r)))
            .toList());
  }

  /** In the heat, on the tables as plugs and as pots, and hardening off. */
  private List<Job.Stay> stays(int s, Response response) {
    int trays = response.setting().trays();
    int sown = response.setting().day();
    int end = scenario.season().days();
    int off = day(response.day(TrayMove.OFF_HEAT), sown, end);
    int out = day(response.day(TrayMove.MOVED_OUT), off, end);
    int potted = Math.min(out, day(response.day(TrayMove.POTTED_ON), off, end));
    int planted = day(response.day(TrayMove.PLANTED_OUT), out, end);
    int pots = (int) Math.round(response.potTrays());
    List<Job.Stay> stays = new ArrayList<>();
    Set<String> heat = heatOf(choices.get(s));
    for (int room = 2; room < rooms.size(); room++) {
      if (!heat.isEmpty() && rooms.get(room).containsAll(heat)) {
        stays.add(new Job.Stay(room, sown, off, trays));
      }
    }
    stays.add(new Job.Stay(0, heat.isEmpty() ? sown : off, potted, trays));
    stays.add(new Job.Stay(0, potted, out, pots));
    stays.add(new Job.Stay(1, out, planted, potted < out ? pots : trays));
    return stays;
  }

  /** A mean day, not before another; the season's end where there is none. */
  private static int day(double mean, int least, int end) {
    return Double.isNaN(mean) ? end : Math.max(least, (int) Math.round(mean));
  }
}

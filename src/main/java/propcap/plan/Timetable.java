package propcap.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.search.strategy.selectors.values.IntDomainMin;
import org.chocosolver.solver.search.strategy.selectors.variables.DomOverWDeg;
import org.chocosolver.solver.variables.IntVar;
import org.chocosolver.solver.variables.Task;

/**
 * Jobs put on days so that no room ever holds more than its spaces: the cumulative model of
 * resource-constrained scheduling (Baptiste, Le Pape and Nuijten 2001, Constraint-Based
 * Scheduling), solved by branch and bound in Choco. No clock is read: the same timetable and limit
 * give the same answer.
 *
 * @param spaces of each room
 * @param orders pairs of jobs of which the first must have ended when the second starts
 */
public record Timetable(List<Integer> spaces, List<Job> jobs, List<Order> orders) {
  public Timetable {
    spaces = List.copyOf(spaces);
    jobs = List.copyOf(jobs);
    orders = List.copyOf(orders);
  }

  /** One job that must have ended when another starts, by their numbers. */
  public record Order(int first, int second) {}

  /**
   * A timetable made.
   *
   * @param options for each job, which of its options
   * @param value what was to be small: the sum of costs, or the last job's end
   * @param isBest whether none is better
   */
  public record Made(List<Integer> options, int value, boolean isBest) {}

  /** What is to be small. */
  public enum Aim {
    /** The sum of the options' costs. */
    LEAST_COST,
    /** The day on which the last job ends. */
    EARLIEST_END
  }

  /**
   * Looks for the best timetable.
   *
   * @param mostDeadEnds after so many the best so far is taken as it is
   * @return empty where there is none, or none was found
   */
  public Optional<Made> make(Aim aim, int mostDeadEnds) {
    return new Attempt(aim).run(mostDeadEnds);
  }

  /** The timetable as variables and constraints. */
  private final class Attempt {
    private final Aim aim;
    private final Model model = new Model("timetable");

    /** Which option of each job. */
    private final IntVar[] chosen;

    private final IntVar[] starts;
    private final IntVar[] ends;
    private final IntVar[] costs;

    Attempt(Aim aim) {
      this.aim = aim;
      int n = jobs.size();
      chosen = new IntVar[n];
      starts = new IntVar[n];
      ends = new IntVar[n];
      costs = new IntVar[n];
      List<List<Task>> tasks = new ArrayList<>();
      List<List<IntVar>> heights = new ArrayList<>();
      spaces.forEach(
          s -> {
            tasks.add(new ArrayList<>());
            heights.add(new ArrayList<>());
          });
      for (int j = 0; j < n; j++) {
        Job job = jobs.get(j);
        chosen[j] = model.intVar("option of " + job.name(), 0, job.options().size() - 1);
        starts[j] = chosenOf(j, Job.Option::start);
        ends[j] = chosenOf(j, Job.Option::end);
        costs[j] = chosenOf(j, Job.Option::cost);
        for (int s = 0; s < job.options().get(0).stays().size(); s++) {
          int stay = s;
          int room = job.options().get(0).stays().get(s).room();
          IntVar length = chosenOf(j, o -> o.stays().get(stay).to() - o.stays().get(stay).from());
          IntVar from = chosenOf(j, o -> o.stays().get(stay).from());
          IntVar to = chosenOf(j, o -> o.stays().get(stay).to());
          tasks.get(room).add(new Task(from, length, to));
          heights.get(room).add(chosenOf(j, o -> o.stays().get(stay).spaces()));
        }
      }
      for (int room = 0; room < spaces.size(); room++) {
        if (!tasks.get(room).isEmpty()) {
          model
              .cumulative(
                  tasks.get(room).toArray(Task[]::new),
                  heights.get(room).toArray(IntVar[]::new),
                  model.intVar(spaces.get(room)))
              .post();
        }
      }
      orders.forEach(o -> model.arithm(ends[o.first()], "<=", starts[o.second()]).post());
    }

    /** A number of the option that is chosen. */
    private IntVar chosenOf(int j, ToIntFunction<Job.Option> number) {
      int[] values = jobs.get(j).options().stream().mapToInt(number).toArray();
      int least = IntStream.of(values).min().orElseThrow();
      int most = IntStream.of(values).max().orElseThrow();
      if (least == most) {
        return model.intVar(least);
      }
      boolean inStep = IntStream.range(0, values.length).allMatch(i -> values[i] == values[0] + i);
      if (inStep) {
        return model.intView(1, chosen[j], values[0]);
      }
      IntVar value = model.intVar(least, most);
      model.element(value, values, chosen[j]).post();
      return value;
    }

    Optional<Made> run(int mostDeadEnds) {
      IntVar value = aimed();
      model.setObjective(Model.MINIMIZE, value);
      Solver solver = model.getSolver();
      solver.limitFail(mostDeadEnds);
      // Learns from dead ends which jobs are hard to place, and tries their smallest values first.
      IntVar[] placed = aim == Aim.EARLIEST_END ? starts : costs;
      solver.setSearch(
          Search.lastConflict(
              Search.intVarSearch(new DomOverWDeg<>(placed, 0), new IntDomainMin(), placed)),
          Search.inputOrderLBSearch(chosen));
      List<Integer> best = List.of();
      int least = 0;
      while (solver.solve()) {
        best = IntStream.of(values()).boxed().toList();
        least = value.getValue();
      }
      return best.isEmpty()
          ? Optional.empty()
          : Optional.of(new Made(best, least, solver.isObjectiveOptimal()));
    }

    private int[] values() {
      return IntStream.range(0, chosen.length).map(j -> chosen[j].getValue()).toArray();
    }

    private IntVar aimed() {
      IntVar[] parts = aim == Aim.LEAST_COST ? costs : ends;
      int most = IntStream.range(0, parts.length).map(p -> parts[p].getUB()).max().orElse(0);
      int sum = IntStream.range(0, parts.length).map(p -> parts[p].getUB()).sum();
      IntVar value = model.intVar("value", 0, aim == Aim.LEAST_COST ? sum : most);
      if (aim == Aim.LEAST_COST) {
        model.sum(parts, "=", value).post();
      } else {
        model.max(value, parts).post();
      }
      return value;
    }
  }
}

package propcap.report.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.plan.Planned;

/** A better plan as a sowing plan that a scenario reads, and as tables. */
record PlanTables(Planned planned) {

  /** What is sown otherwise than before. */
  static final Table<PlanChange> CHANGES =
      new Table<PlanChange>(
              "Sowing",
              c -> c.change().to().id(),
              c -> c.change().place() == null ? "" : c.change().place() + " first")
          .json("id", c -> c.change().to().id())
          .json("sow", c -> c.change().to().sow())
          .words("Sow", c -> Dates.onOneLine(c.change().to().sow(), c.season()))
          .json("daysLater", c -> c.change().daysLater())
          .number(
              "Days",
              "later",
              c -> c.change().daysLater() == 0 ? "–" : Words.signed(c.change().daysLater()))
          .json("trays", c -> c.change().to().trays())
          .cell(
              "Trays",
              "now",
              c ->
                  Cell.of(Words.count(c.change().to().trays()))
                      .strongIf(c.change().traysMore() != 0))
          .number("Trays", "as it was", c -> Words.count(c.change().from().trays()))
          .json("traysMore", c -> c.change().traysMore())
          .json("germinateIn", c -> Optional.ofNullable(c.change().place()))
          .json("why", PlanChange::why)
          .words("Why", PlanChange::why);

  private record Search(int springs, int tries, String startedFrom, boolean isStopped) {}

  String json(String version) {
    PlanWords words = PlanWords.of(planned);
    return Json.text(
        new Table<Planned>()
            .json("scenario", p -> p.start().name())
            .json("version", p -> version)
            .json("verdict", p -> words.verdict())
            .json("isConfirmed", Planned::isConfirmed)
            .json("seed", p -> p.settings().seed())
            .json("freshSeed", Planned::freshSeed)
            .json("freshSeasons", p -> p.before().seasons())
            .json("currency", p -> Money.currency(p.start()))
            .json("search", p -> search(p.search()))
            .json("gain", Planned::gain)
            .json("met", Planned::met)
            .json("givenUp", p -> p.givenUp().stream().map(g -> id(g.sowing())).toList())
            .json("toBest", p -> p.bound().toBest())
            .json("missed", p -> new PlanMissed(p).all().stream().map(m -> m.told()).toList())
            .json("changes", p -> CHANGES.objects(PlanChange.of(p)))
            .json("sowings", p -> chances().objects(sowings()))
            .members(planned));
  }

  private static Search search(Planned.Search search) {
    return new Search(
        search.springs(), search.tries(), search.startedFrom().name(), search.isStopped());
  }

  private String id(int sowing) {
    return planned.start().sowings().get(sowing).id();
  }

  /** The sowing plan to sow by, in the columns of the one it came from. */
  String sowingPlan() {
    List<Sowing> sowings = planned.kept().scenario().sowings();
    return new Table<Sowing>()
        .csv("id", Sowing::id)
        .csv("crop", Sowing::crop)
        .csv("lot", Sowing::lot)
        .csv("sow", Sowing::sow)
        .csv("trays", Sowing::trays)
        .csv("plants-needed", Sowing::plantsNeeded)
        .csv("bed-from", Sowing::bedFrom)
        .csv("bed-by", Sowing::bedBy)
        .csv("bed-until", Sowing::bedUntil)
        .csv("resow-until", Sowing::resowUntil)
        .when(
            sowings.stream().anyMatch(s -> s.germinateIn() != null),
            t -> t.csv("germinate-in", Sowing::germinateIn))
        .when(
            sowings.stream().anyMatch(s -> !s.leeway().equals(Sowing.Leeway.NOT_SAID)),
            t ->
                t.csv("sow-from", s -> s.leeway().from())
                    .csv("sow-to", s -> s.leeway().to())
                    .csv("goal", s -> goal(s.leeway().goal())))
        .csv(sowings);
  }

  private static @Nullable String goal(@Nullable Double goal) {
    return goal == null ? null : Words.given(goal);
  }

  /** Every sowing, by its number in the plan. */
  List<Integer> sowings() {
    return IntStream.range(0, planned.goals().size()).boxed().toList();
  }

  /** A row for each sowing: what it was and is, and its chance before and now. */
  Table<Integer> chances() {
    return new Table<Integer>("Sowing", s -> is(s).sowing().id())
        .file("id", s -> was(s).sowing().id())
        .csv("sow-before", s -> was(s).sowing().sow())
        .csv("sow", s -> is(s).sowing().sow())
        .csv(
            "days-later",
            s -> is(s).sowing().sow().toEpochDay() - was(s).sowing().sow().toEpochDay())
        .csv("trays-before", s -> was(s).sowing().trays())
        .csv("trays", s -> is(s).sowing().trays())
        .csv("germinate-in", s -> is(s).sowing().germinateIn())
        .file("goal", s -> planned.goals().get(s))
        .number("Goal", "", s -> Words.chance(planned.goals().get(s)))
        .csv("chance-before", s -> was(s).chanceMet())
        .json("before", s -> was(s).chanceMet())
        .cell("As it was", "", s -> chance(was(s), planned.goals().get(s)))
        .csv("chance", s -> is(s).chanceMet())
        .json("now", s -> is(s).chanceMet())
        .cell("Now", "", s -> chance(is(s), planned.goals().get(s)))
        .csv("chance-low", s -> is(s).chanceMetLow())
        .csv("chance-high", s -> is(s).chanceMetHigh())
        .json("alone", s -> planned.alone().get(s).chance())
        .number("Alone", "", s -> Words.chance(planned.alone().get(s).chance()))
        .csv("why", this::why);
  }

  private SowingForecast was(int sowing) {
    return planned.before().sowings().get(sowing);
  }

  private SowingForecast is(int sowing) {
    return planned.kept().sowings().get(sowing);
  }

  private static Cell chance(SowingForecast forecast, double goal) {
    return Cell.of(
            Words.chance(forecast.chanceMet()),
            Words.chances(forecast.chanceMetLow(), forecast.chanceMetHigh()))
        .strongIf(forecast.chanceMet() < goal);
  }

  private String why(int sowing) {
    return PlanChange.of(planned).stream()
        .filter(c -> c.change().sowing() == sowing)
        .map(PlanChange::why)
        .findFirst()
        .orElse("");
  }
}

package propcap.report.plan;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Sowing;
import propcap.report.kit.Money;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;
import propcap.report.kit.Words;
import propcap.study.Forecast.SowingForecast;
import propcap.study.Planned;

/** A better plan as a sowing plan that a scenario reads, and for other programs. */
final class PlanFiles {
  private PlanFiles() {}

  /** The sowing plan to sow by, in the columns of the one it came from. */
  static String sowings(Planned planned) {
    List<Sowing> sowings = planned.kept().scenario().sowings();
    boolean hasPlaces = sowings.stream().anyMatch(s -> s.germinateIn() != null);
    boolean hasLeeway = sowings.stream().anyMatch(s -> !s.leeway().equals(Sowing.Leeway.NOT_SAID));
    RowCsv table = new RowCsv();
    table.row(
        List.of("id", "crop", "lot", "sow", "trays", "plants-needed", "bed-from", "bed-by"),
        List.of("bed-until", "resow-until"),
        only(hasPlaces, "germinate-in"),
        only(hasLeeway, "sow-from", "sow-to", "goal"));
    for (Sowing s : sowings) {
      Double goal = s.leeway().goal();
      table.row(
          List.of(s.id(), s.crop(), s.lot(), RowCsv.date(s.sow())),
          List.of(RowCsv.whole(s.trays()), RowCsv.whole(s.plantsNeeded())),
          List.of(RowCsv.date(s.bedFrom()), RowCsv.date(s.bedBy())),
          List.of(RowCsv.date(s.bedUntil()), RowCsv.date(s.resowUntil())),
          only(hasPlaces, Objects.requireNonNullElse(s.germinateIn(), "")),
          only(
              hasLeeway,
              RowCsv.date(s.leeway().from()),
              RowCsv.date(s.leeway().to()),
              goal == null ? "" : Words.given(goal)));
    }
    return table.text();
  }

  private static List<String> only(boolean wanted, String... cells) {
    return wanted ? List.of(cells) : List.of();
  }

  /** A row for each sowing: what it was and is, and its chance before and now. */
  static String changes(Planned planned) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("id", "sow-before", "sow", "days-later", "trays-before", "trays"),
        List.of("germinate-in", "goal", "chance-before", "chance", "chance-low", "chance-high"),
        List.of("why"));
    for (int s = 0; s < planned.goals().size(); s++) {
      SowingForecast was = planned.before().sowings().get(s);
      SowingForecast is = planned.kept().sowings().get(s);
      table.row(
          List.of(
              was.sowing().id(), RowCsv.date(was.sowing().sow()), RowCsv.date(is.sowing().sow())),
          RowCsv.wholes(
              is.sowing().sow().toEpochDay() - was.sowing().sow().toEpochDay(),
              was.sowing().trays(),
              is.sowing().trays()),
          List.of(Objects.requireNonNullElse(is.sowing().germinateIn(), "")),
          RowCsv.numbers(planned.goals().get(s), was.chanceMet()),
          RowCsv.numbers(is.chanceMet(), is.chanceMetLow(), is.chanceMetHigh()),
          List.of(why(planned, s)));
    }
    return table.text();
  }

  private static String why(Planned planned, int sowing) {
    return changes(planned, sowing).map(PlanChange::why).findFirst().orElse("");
  }

  private static Stream<PlanChange> changes(Planned planned, int sowing) {
    return PlanChange.of(planned).stream().filter(c -> c.change().sowing() == sowing);
  }

  static String json(Planned planned, String version) {
    PlanWords words = PlanWords.of(planned);
    PutJson json =
        new PutJson()
            .put("scenario", planned.start().name())
            .put("version", version)
            .put("verdict", words.verdict())
            .put("isConfirmed", planned.isConfirmed())
            .put("seed", planned.settings().seed())
            .put("freshSeed", planned.freshSeed())
            .put("freshSeasons", planned.before().seasons());
    Money.of(planned.start()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put(
            "search",
            new PutJson()
                .put("springs", planned.search().springs())
                .put("tries", planned.search().tries())
                .put("startedFrom", planned.search().startedFrom().name())
                .put("isStopped", planned.search().isStopped()))
        .put("gain", planned.gain())
        .put("met", planned.met())
        .put(
            "givenUp",
            PutJson.texts(
                planned.givenUp().stream()
                    .map(g -> planned.start().sowings().get(g.sowing()).id())
                    .toList()))
        .put("toBest", planned.bound().toBest())
        .put(
            "missed",
            PutJson.texts(
                new PlanMissed(planned).all().stream().map(PlanMissed.Missed::told).toList()))
        .put("changes", PutJson.each(PlanChange.of(planned), PlanFiles::change))
        .put(
            "sowings",
            PutJson.each(
                IntStream.range(0, planned.goals().size()).boxed().toList(),
                s -> chances(planned, s)))
        .text();
  }

  private static PutJson change(PlanChange change) {
    @Nullable String place = change.change().place();
    PutJson json =
        new PutJson()
            .put("id", change.change().to().id())
            .put("sow", change.change().to().sow())
            .put("daysLater", change.change().daysLater())
            .put("trays", change.change().to().trays())
            .put("traysMore", change.change().traysMore());
    return (place == null ? json : json.put("germinateIn", place)).put("why", change.why());
  }

  private static PutJson chances(Planned planned, int s) {
    return new PutJson()
        .put("id", planned.start().sowings().get(s).id())
        .put("goal", planned.goals().get(s))
        .put("before", planned.before().sowings().get(s).chanceMet())
        .put("now", planned.kept().sowings().get(s).chanceMet())
        .put("alone", planned.alone().get(s).chance());
  }
}

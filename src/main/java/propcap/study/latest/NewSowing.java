package propcap.study.latest;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.SowingNeed;
import propcap.study.BadQuestionException;

/**
 * A sowing that is not in the plan, of a crop of the list: what if it were started yet?
 *
 * @param plants needed in the ground by {@code bedBy}
 * @param bedFrom first day on which the bed is free; null: it is free all season
 * @param trays null: as many as reach the goal
 */
public record NewSowing(
    String crop,
    int plants,
    @Nullable LocalDate bedFrom,
    LocalDate bedBy,
    @Nullable Integer trays) {
  /**
   * The plan with it, its day to be found; it comes last and has the id that {@link #idIn} gives.
   * No money is asked of it, for none may be known.
   *
   * @throws BadQuestionException where the crop list lacks the crop, nothing can germinate it, or
   *     the bed's days or the numbers make no sense
   */
  public PlanNeeds in(PlanNeeds plan) throws BadQuestionException {
    check(plan.scenario());
    String id = idIn(plan.scenario());
    Integer known = trays;
    Season season = plan.scenario().season();
    LocalDate from = bedFrom;
    Sowing sowing =
        new Sowing(
            id,
            crop,
            crop,
            season.start(),
            known == null ? 1 : known,
            plants,
            from == null ? season.start() : from,
            bedBy,
            null,
            null,
            null,
            Sowing.Leeway.NOT_SAID);
    try {
      return new PlanNeeds(plan.scenario().withoutMoney(), plan.needs())
          .with(sowing, new SowingNeed(id, true, known == null));
    } catch (IllegalArgumentException e) {
      throw new BadQuestionException(String.valueOf(e.getMessage()));
    }
  }

  /** Its id, which no other sowing has. */
  public String idIn(Scenario scenario) {
    List<String> ids = scenario.sowings().stream().map(Sowing::id).toList();
    String id = "new " + crop;
    for (int n = 2; ids.contains(id); n++) {
      id = "new " + crop + " " + n;
    }
    return id;
  }

  private void check(Scenario scenario) throws BadQuestionException {
    Season season = scenario.season();
    Integer known = trays;
    LocalDate from = bedFrom;
    if (!scenario.crops().containsKey(crop)) {
      throw new BadQuestionException(
          "the crop list lacks '%s'; it has %s"
              .formatted(crop, String.join(", ", new TreeSet<>(scenario.crops().keySet()))));
    }
    if (!season.contains(bedBy)) {
      throw new BadQuestionException(
          "the bed's last day %s is outside the season, %s to %s"
              .formatted(bedBy, season.start(), season.end()));
    }
    if (from != null && from.isAfter(bedBy)) {
      throw new BadQuestionException(
          "the bed is free from " + from + ", after its last day " + bedBy);
    }
    if (plants < 1 || plants > Sowing.MOST_PLANTS) {
      throw new BadQuestionException(
          "plants are from 1 to " + Sowing.MOST_PLANTS + ", was " + plants);
    }
    if (known != null && (known < 1 || known > Sowing.MOST_TRAYS)) {
      throw new BadQuestionException("trays are from 1 to " + Sowing.MOST_TRAYS + ", was " + known);
    }
  }
}

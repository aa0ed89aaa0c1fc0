package propcap.report.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.FilledWords;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.plan.Planned;

/** The page of a better plan: what changes and why, what it brings, and how full the places are. */
final class PlanPage {
  private final Planned planned;
  private final List<Filled> filled;
  private final PlanWords words;

  private PlanPage(Planned planned, List<Filled> filled) {
    this.planned = planned;
    this.filled = filled;
    this.words = PlanWords.of(planned);
  }

  static AnswerPage of(Planned planned, List<Filled> filled, String version) {
    return new PlanPage(planned, filled).page(version);
  }

  private AnswerPage page(String version) {
    List<Fact> facts =
        new ArrayList<>(
            Fact.of(
                planned.start(),
                Words.count(planned.before().seasons()) + " fresh ones of each plan",
                planned.settings()));
    facts.add(new Fact("Seed of the fresh springs", Long.toString(planned.freshSeed())));
    List<Part> parts = new ArrayList<>(List.of(gain(), changes()));
    if (planned.isConfirmed()) {
      parts.add(room());
    }
    parts.add(chances());
    return new AnswerPage(
        planned.start().name(), "A better sowing plan", facts, version, parts, reading());
  }

  private Part gain() {
    List<String> sentences =
        new ArrayList<>(FilledWords.sentences(filled, planned.start().season()));
    words.nearlyThere().ifPresent(sentences::add);
    if (planned.isConfirmed()) {
      sentences.add(words.traysSown());
    }
    words.bound().ifPresent(sentences::add);
    sentences.add(words.search());
    if (planned.isConfirmed()) {
      sentences.addAll(words.foremost());
    }
    return new Part(
        "gain",
        "What it brings",
        Stream.concat(words.givenUp().stream(), Stream.of(words.verdict(), words.goals())).toList(),
        sentences,
        List.of(),
        List.of(missed(), FilledWords.sheet(filled, planned.start().season())));
  }

  private Sheet missed() {
    return new Table<PlanMissed.Missed>("Sowing", PlanMissed.Missed::sowing)
        .words("Its plants are in time", PlanMissed.Missed::lacks)
        .sheet(
            "Sowings that miss their goal.",
            "What they lack, under the plan to sow by.",
            new PlanMissed(planned).all());
  }

  private Part changes() {
    return new Part(
        "changes",
        "What changes, and why",
        List.of(),
        planned.changes().isEmpty() ? List.of("Nothing changes.") : List.of(),
        List.of(),
        List.of(
            PlanTables.CHANGES.sheet(
                "What is sown otherwise than before.",
                "Days less than 0 are earlier. Beds and plants needed stay as they are.",
                PlanChange.of(planned))));
  }

  private Part room() {
    return new Part(
        "room",
        "How full the places are",
        List.of(),
        List.of(),
        List.of(
            new Figure(
                "Tray spaces in use, before and now.",
                "The line and band are the new plan, the dots the plan as it was.",
                RoomsChart.of(
                    planned.start().season(),
                    planned.before().kinds(),
                    planned.kept().kinds(),
                    "rooms"))),
        List.of());
  }

  private Part chances() {
    PlanTables tables = new PlanTables(planned);
    return new Part(
        "chances",
        "Each sowing’s chance",
        List.of(),
        List.of(
            tables
                .chances()
                .sheet(
                    "Chance to have the plants needed in the ground on time.",
                    "With the interval of the fresh springs. Below the goal is bold. Alone: with"
                        + " endless room, on its surest day and in all the trays that it may have;"
                        + " or as in the plan, where it does even better there.",
                    tables.sowings())));
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(
        new AnswerPage.Term(
            "A spring",
            "is one season tried with its own weather and luck; plans were compared on the same"
                + " springs, so that what differs is the plan and not the luck. The same files, seed"
                + " and number of tries give the same plan; a search by the clock may not."));
    terms.add(
        new AnswerPage.Term(
            "Fresh springs",
            "had no part in finding the plan. One that is picked for doing well on some springs does a"
                + " little worse on others, so what it brings is measured on those alone."));
    terms.add(AnswerPage.PLUS_MINUS);
    terms.add(
        new AnswerPage.Term(
            "Its goal",
            "is the chance with which a sowing’s plants must be in the ground on time. The plan is to"
                + " reach every goal first, and then to bring the most. Chances are those of the fresh"
                + " springs; the forecast’s own springs may count one or two sowings otherwise."));
    terms.add(
        new AnswerPage.Term(
            "Given up",
            "is a sowing that does not reach its goal and beyond doubt does worse than under the plan"
                + " as it was: in fewer springs, or, where in no more, with fewer of the plants that"
                + " it needs. It is not done unless it was allowed."));
    terms.add(
        new AnswerPage.Term(
            "By itself",
            "a change does what the plan would lose if it alone were taken back, tried on up to "
                + Planned.EFFECT_SPRINGS
                + " of the fresh springs."));
    if (words.bound().isPresent()) {
      terms.add(
          new AnswerPage.Term(
              "No plan",
              "passes what seed and trays can give: all cells that fill, less only what every tray"
                  + " loses on its way, all on time, with trays, pots and the hands that sow and plant"
                  + " them to pay and no place. It holds in each spring, whatever the days and the"
                  + " room."));
    }
    Optional.of(planned)
        .filter(p -> p.start().prices() != null)
        .ifPresent(p -> terms.add(AnswerPage.MONEY));
    return terms;
  }
}

package propcap.report.stages;

import java.util.ArrayList;
import java.util.List;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Stages;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Words;

/** The page of what a log of trays says. */
final class StagesPage {
  private StagesPage() {}

  static AnswerPage of(Stages stages, String version) {
    List<Part> parts = new ArrayList<>();
    List<StagesWords> words = StagesWords.of(stages);
    for (int i = 0; i < words.size(); i++) {
      parts.add(part(words.get(i), i + 1));
    }
    int trays = stages.crops().stream().mapToInt(c -> c.trays().size()).sum();
    return new AnswerPage(
        stages.scenario().name(),
        "What the log of trays says of growing on, potting and hardening off",
        List.of(
            new Fact(
                "Log", Words.plural(trays, "tray") + ", " + Words.plural(words.size(), "crop")),
            new Fact("The crop list", "weighs " + Words.plural(stages.listedTrays(), "tray")),
            new Fact(
                "Temperatures",
                stages.allRecorded()
                    ? "of the weather record, on the very dates"
                    : "in part the record’s mean for the day of the year")),
        version,
        parts,
        reading(stages));
  }

  private static Part part(StagesWords words, int number) {
    CropStages crop = words.crop();
    List<String> sentences = new ArrayList<>();
    sentences.add(words.losses());
    sentences.add(words.outbreaks());
    sentences.add(words.holding());
    sentences.addAll(words.use());
    sentences.addAll(words.warnings());
    return new Part(
        "crop" + number,
        words.name(),
        List.of(words.verdict()),
        sentences,
        List.of(
            new Figure(
                "How long growing on takes, tray by tray.",
                "In days at "
                    + StagesWords.temperature(crop.crop().growingOn().atC())
                    + ". A mark is a tray with the day on which it was ready, its whisker the time"
                    + " between two rounds; the lines are what is to be expected of trays.",
                RequirementChart.of(crop, "takes" + number)),
            new Figure(
                "Plants lost, stage by stage.",
                "Outbreaks of damping-off are apart. Whiskers are 95 % intervals.",
                StageLossChart.of(crop, "losses" + number)),
            new Figure(
                "Outbreaks and background.",
                "Trays by the share of their stand that was lost on the table.",
                OutbreakChart.of(crop, "outbreaks" + number))),
        List.of(
            StagesTables.FIGURE.sheet(
                "What to write for " + crop.crop().name() + ".",
                "With 95 % intervals. stages.yaml has the lines for the crop list.",
                StagesFigure.of(crop))));
  }

  private static List<AnswerPage.Term> reading(Stages stages) {
    return List.of(
        new AnswerPage.Term(
            "The crop list",
            "counts as if "
                + Words.plural(stages.listedTrays(), "tray")
                + " had shown what it says, and the severity of damping-off as if "
                + Words.plural(Stages.LISTED_OUTBREAKS, "outbreak")
                + " had. Three trays of the log shift it a little, three hundred replace it."),
        new AnswerPage.Term(
            "95 % intervals",
            "hold if trays differ as the model has it. They know nothing of a table that was warmer"
                + " than its climate says, or of plants that were counted wrong."),
        new AnswerPage.Term(
            "Log alone",
            "is what the trays would say without the crop list. Where its interval lies apart from"
                + " that of the list, the two contradict each other. How bad an outbreak is it cannot"
                + " tell without any notion from the list."),
        new AnswerPage.Term(
            "Ready",
            "is the day on which the plugs were judged ready. A tray that was moved without it was"
                + " ready by then, and perhaps long before: it tells of losses, and of how long"
                + " growing on takes only where it was moved before it can have been ready. One that"
                + " is not ready when the log ends tells that it takes longer than that, if the log"
                + " says of others when they were."),
        new AnswerPage.Term(
            "Temperatures",
            "of a table follow from its climate and the weather record: its rows of those very dates"
                + " where it has them, otherwise the mean of what that day of the year gave over its"
                + " years."),
        new AnswerPage.Term(
            "Keeping",
            "is for how many days a ready plug stands without harm, and what each day beyond costs"
                + " follows from the same counts: trays that were all held alike hardly tell the two"
                + " apart, so then both stay near the crop list. Where it is not written when plugs"
                + " were ready, every day that may have been it counts as likely as it is. Pots are"
                + " ready and keep as the crop list has it, for a log does not say."));
  }
}

package propcap.report.frost;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.weather.DayEstimate;
import propcap.evidence.weather.FrostDates;
import propcap.evidence.weather.FrostDates.FrostDate;
import propcap.evidence.weather.FrostTable;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.AnswerPage.Term;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** The page of when frost becomes unlikely. */
final class FrostPage {
  private final FrostTable table;
  private final FrostWords words;
  private final FrostTables tables;

  private FrostPage(FrostTable table) {
    this.table = table;
    this.words = new FrostWords(table);
    this.tables = new FrostTables(table);
  }

  /**
   * The page.
   *
   * @param record the weather record's name
   * @param cropList the crop list's name
   */
  static AnswerPage of(FrostTable table, String record, String cropList, String version) {
    FrostPage page = new FrostPage(table);
    return new AnswerPage(
        record,
        "Frost: from when is it safe to go out?",
        List.of(
            new Fact("Record", page.words.years()),
            new Fact("Season", page.words.span()),
            new Fact("Crop list", cropList),
            new Fact("Released by", "frosts at or below " + FrostWords.degrees(table.frostAtC()))),
        version,
        List.of(page.dates(), page.releases(), page.trust()),
        page.reading());
  }

  private Part dates() {
    return new Part(
        "dates",
        "1. From when frost is unlikely",
        table.thresholds().stream().map(words::verdict).toList(),
        words.warnings(),
        List.of(
            new Figure(
                "The chance of a frost on or after each day.",
                "Counted: the share of the record’s years. Normal: the day of the last frost taken"
                    + " as normal.",
                FrostChart.of(table))),
        List.of(
            sheet(
                "Counted: the first day with no more than so much chance of a frost on or after it.",
                FrostDate::counted),
            sheet("The same by a normal fitted to the last frosts.", FrostDate::fittedOrNull)));
  }

  /** The dates by chance, a column for each threshold. */
  private Sheet sheet(String title, Function<FrostDate, @Nullable DayEstimate> estimate) {
    Table<Integer> sheet = new Table<>("Chance", c -> Words.percent(FrostTable.CHANCES.get(c)));
    for (FrostDates frosts : table.thresholds()) {
      sheet.cell(
          FrostWords.degrees(frosts.record().frostAtC()),
          "95 % limits",
          c -> tables.cell(estimate.apply(frosts.dates().get(c))));
    }
    return sheet.sheet(
        title,
        "Below each day, the limits of a record of so many years.",
        IntStream.range(0, FrostTable.CHANCES.size()).boxed().toList());
  }

  private Part releases() {
    return new Part(
        "releases",
        "2. When each crop may go out to harden",
        List.of(),
        List.of(
            "The release date is the first day on which the counted chance of a frost is no more"
                + " than the crop’s frost-risk, plus its offset. A forecast goes by the same"
                + " dates where its season and its record are the same."),
        List.of(),
        List.of(tables.releases()));
  }

  private Part trust() {
    List<String> sentences = new ArrayList<>();
    table.thresholds().forEach(t -> sentences.add(words.fit(t)));
    sentences.add(
        "Years counted: " + Words.list(table.years().stream().map(String::valueOf).toList()) + ".");
    return new Part(
        "trust", "3. How well so many years tell it", List.of(), sentences, List.of(), List.of());
  }

  private List<Term> reading() {
    return List.of(
        new Term(
            "A frost",
            "is a day whose lowest temperature at the station is at or below the threshold. In a"
                + " hollow it is colder, and leaves on a clear still night are colder than the"
                + " air at the station."),
        new Term(
            "Counted",
            "takes each year of the record as likely as any other. Its limits are days of the"
                + " record itself and hold whatever the pattern of last frosts; where there are too"
                + " few years they are open at one end."),
        new Term(
            "Normal",
            "takes the day of the last frost as normally distributed over the years that had one."
                + " It reaches beyond the record, and its limits are closer, but both hold only as"
                + " far as the normal does."),
        new Term(
            "95 % limits",
            "are the error that comes from having so many years and no more. They take the coming"
                + " spring to be like the recorded ones: a climate that warms or cools is not in"
                + " them."));
  }
}

package propcap.files.scenario;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import propcap.farm.Labour;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Quantity;

/**
 * What a scenario says by itself, without the files and lists that it names.
 *
 * @param season empty where it could not be read
 * @param rounds empty where they could not be read
 * @param weather what names the weather record
 * @param soFar what names the log of this season; empty where none is named
 * @param weatherSoFar what names this season's days; empty where nothing does
 * @param labour empty where it could not be read
 * @param money empty where none is asked or it could not be read
 */
record ScenarioFields(
    String name,
    Optional<Season> season,
    double frostAtC,
    Optional<Rounds> rounds,
    Optional<Node> weather,
    Optional<Node> soFar,
    Optional<Node> weatherSoFar,
    Optional<Labour> labour,
    Optional<Fields> money) {
  private static final List<String> KEYS =
      List.of(
          "name",
          "season",
          "weather",
          "so-far",
          "weather-so-far",
          "frost-at",
          "rounds",
          "labour",
          "money");

  /** A season is cut from the years of a record, so it is no longer than one. */
  private static final int MOST_DAYS = 366;

  private static final Pattern TIME = Pattern.compile("([0-9]{1,2}):([0-9]{2})");

  static ScenarioFields read(Path file, Node.Keyed written, Faults faults) {
    Fields fields = new Fields("", FilePosition.whole(file), written, KEYS, faults);
    Optional<Season> season =
        fields.map("season", "the season", List.of("start", "end")).flatMap(ScenarioFields::season);
    return new ScenarioFields(
        fields.has("name") ? fields.name("name").orElse("") : stem(file),
        season,
        fields.number("frost-at", Quantity.TEMPERATURE, Scenario.DEFAULT_FROST_AT_C),
        fields.part(
            "rounds", "rounds", List.of("at", "rest"), ScenarioFields::rounds, Rounds.everyDay()),
        fields.value("weather"),
        fields.has("so-far") ? fields.value("so-far") : Optional.empty(),
        fields.has("weather-so-far") ? fields.value("weather-so-far") : Optional.empty(),
        fields.part(
            "labour",
            "labour",
            LabourFields.KEYS,
            labour -> LabourFields.read(labour, season),
            Labour.NOT_LIMITED),
        fields.has("money") ? fields.map("money", "money", MoneyFields.KEYS) : Optional.empty());
  }

  /** The file's name without what comes after its last dot. */
  private static String stem(Path file) {
    String name = String.valueOf(file.getFileName());
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static Optional<Season> season(Fields fields) {
    LocalDate start = fields.date("start");
    LocalDate end = fields.date("end");
    if (start == null || end == null) {
      return Optional.empty();
    }
    if (end.isBefore(start)) {
      fields.wrongPair("end", "start", "before", "a season that ends on or after its start");
    } else if (end.isAfter(start.plusDays(MOST_DAYS - 1))) {
      fields.wrongPair("end", "start", "too long after", "at most " + MOST_DAYS + " days");
    }
    return fields.made(() -> new Season(start, end));
  }

  private static Optional<Rounds> rounds(Fields fields) {
    LocalTime at =
        fields.has("at")
            ? fields
                .text("at", ScenarioFields::time, "a time of day such as \"08:00\"")
                .orElse(Rounds.DEFAULT_AT)
            : Rounds.DEFAULT_AT;
    Set<DayOfWeek> rest = EnumSet.noneOf(DayOfWeek.class);
    List<String> days = Arrays.stream(DayOfWeek.values()).map(DayOfWeek::name).toList();
    if (fields.has("rest")) {
      for (Node.Text text : fields.list("rest", "[SUNDAY]")) {
        String day = text.text().strip().toUpperCase(Locale.ROOT);
        if (days.contains(day)) {
          rest.add(DayOfWeek.valueOf(day));
        } else {
          fields.fault(
              text.spot(), "rest day " + text.kind(), FaultWords.oneOf(text.text().strip(), days));
        }
      }
    }
    if (rest.size() == days.size()) {
      fields.fault(fields.spot("rest"), "no working day in the week", "at least one");
    }
    return fields.made(() -> new Rounds(at, rest));
  }

  private static Optional<LocalTime> time(Node.Text text) {
    Matcher written = TIME.matcher(text.text().strip());
    try {
      return written.matches()
          ? Optional.of(
              LocalTime.of(Integer.parseInt(written.group(1)), Integer.parseInt(written.group(2))))
          : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}

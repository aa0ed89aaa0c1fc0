package propcap.files.scenario;

import static propcap.files.text.Quantity.HOURS_PER_DAY;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import propcap.farm.Labour;
import propcap.farm.Labour.Extra;
import propcap.farm.Labour.Minutes;
import propcap.farm.Season;
import propcap.farm.WorkKind;
import propcap.files.text.Fields;
import propcap.files.text.Quantity;

/** People's hours, as they are written. */
final class LabourFields {
  static final List<String> KEYS = List.of("hours", "minutes", "extra");

  private static final List<String> WORKS =
      Arrays.stream(WorkKind.values()).map(WorkKind::word).toList();
  private static final List<String> OF_EXTRA = List.of("from", "until", "hours");
  private static final String EXAMPLE = "{from: 2027-04-05, until: 2027-04-17, hours: 8/day}";

  private LabourFields() {}

  /**
   * Reads the hours.
   *
   * @param season that extra people should come in; empty where it could not be read
   * @return empty where any of it could not be read
   */
  static Optional<Labour> read(Fields fields, Optional<Season> season) {
    double hours = fields.number("hours", HOURS_PER_DAY, Labour.NOT_LIMITED.hoursPerDay());
    Optional<Minutes> minutes =
        fields.part("minutes", "labour's minutes", WORKS, LabourFields::minutes, Minutes.DEFAULT);
    List<Optional<Extra>> extra = extra(fields, season);
    if (minutes.isEmpty() || extra.stream().anyMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    List<Extra> known = extra.stream().flatMap(Optional::stream).toList();
    return fields.made(() -> new Labour(hours, minutes.get(), known));
  }

  private static Optional<Minutes> minutes(Fields fields) {
    double sow = of(fields, WorkKind.SOW);
    double move = of(fields, WorkKind.MOVE);
    double thin = of(fields, WorkKind.THIN);
    double potOn = of(fields, WorkKind.POT_ON);
    double plantOut = of(fields, WorkKind.PLANT_OUT);
    return fields.made(() -> new Minutes(sow, move, thin, potOn, plantOut));
  }

  private static double of(Fields fields, WorkKind work) {
    Quantity quantity =
        work.unit().equals("tray") ? Quantity.MINUTES_PER_TRAY : Quantity.MINUTES_PER_PLANT;
    return fields.number(work.word(), quantity, Minutes.DEFAULT.of(work));
  }

  private static List<Optional<Extra>> extra(Fields fields, Optional<Season> season) {
    List<Optional<Extra>> all = new ArrayList<>();
    if (!fields.has("extra")) {
      return all;
    }
    if (!fields.has("hours") && !fields.known().open()) {
      fields.fault(
          fields.spot("extra"),
          "extra people without hours, which are then not limited",
          "hours of a usual day, such as hours: 12/day");
    }
    for (Fields one : fields.maps("extra", "extra people", OF_EXTRA, EXAMPLE)) {
      all.add(extraPeople(one, season));
    }
    return all;
  }

  private static Optional<Extra> extraPeople(Fields one, Optional<Season> season) {
    LocalDate from = one.date("from");
    LocalDate until = one.date("until");
    double hours = one.number("hours", HOURS_PER_DAY);
    if (from == null || until == null) {
      return Optional.empty();
    }
    if (until.isBefore(from)) {
      one.wrongPair("until", "from", "before", "until on or after from");
    } else if (season.isPresent()
        && (until.isBefore(season.get().start()) || from.isAfter(season.get().end()))) {
      one.wrong(
          from.isAfter(season.get().end()) ? "from" : "until",
          "when there is no season",
          season.get().start() + " to " + season.get().end());
    }
    return one.made(() -> new Extra(from, until, hours));
  }
}

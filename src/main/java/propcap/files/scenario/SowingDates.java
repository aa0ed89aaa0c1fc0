package propcap.files.scenario;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.files.text.Fields;

/** Whether the dates of a sowing, each right in itself, can be meant together. */
final class SowingDates {
  private final Fields fields;
  private final Sowing sowing;
  private final Season season;

  SowingDates(Fields fields, Sowing sowing, Season season) {
    this.fields = fields;
    this.sowing = sowing;
    this.season = season;
  }

  /** Tells the first fault, or else what is unlikely; last year's plan, copied, has old beds. */
  void check() {
    String right = "a date within the season, " + season.start() + " to " + season.end();
    LocalDate from = sowing.leeway().from();
    LocalDate to = sowing.leeway().to();
    if (sowing.bedBy().isBefore(season.start())) {
      fields.wrong("bed-by", "before the season", right);
    } else if (sowing.bedFrom().isAfter(season.end())) {
      fields.wrong("bed-from", "after the season", right);
    } else if (fields.isBlank("sow")) {
      // When to sow is yet to be found, so that nothing is before or after it.
      otherYears(right);
    } else if (sowing.bedBy().isBefore(sowing.sow())) {
      fields.wrongPair("bed-by", "sow", "before", "a bed after the sowing");
    } else if (isBeforeSowing(sowing.resowUntil())) {
      fields.wrongPair("resow-until", "sow", "before", "resow-until on or after sow, or empty");
    } else if (from != null && from.isAfter(sowing.sow()) && isOfOneFile("sow-from")) {
      fields.wrongPair("sow-from", "sow", "after", "sow-from on or before sow");
    } else if (isBeforeSowing(to) && isOfOneFile("sow-to")) {
      fields.wrongPair("sow-to", "sow", "before", "sow-to on or after sow");
    } else {
      otherYears(right);
    }
  }

  private boolean isBeforeSowing(@Nullable LocalDate date) {
    return date != null && date.isBefore(sowing.sow());
  }

  /** A scenario that moves a sowing out of its plan's own bounds does so on purpose. */
  private boolean isOfOneFile(String key) {
    return fields.spot(key).file().equals(fields.spot("sow").file());
  }

  private void otherYears(String right) {
    Map<String, LocalDate> dates = new LinkedHashMap<>();
    dates.put("bed-from", sowing.bedFrom());
    dates.put("bed-by", sowing.bedBy());
    if (sowing.bedUntil() != null) {
      dates.put("bed-until", sowing.bedUntil());
    }
    dates.forEach(
        (key, date) -> {
          if (date.getYear() < season.start().getYear()
              || date.getYear() > season.end().getYear()) {
            fields.doubt(key, "in another year than the season", right);
          }
        });
  }

  /** A sowing too late for its bed, or too small for its need, can be meant but seldom is. */
  static void doubt(Fields fields, Sowing sowing, Crop crop) {
    long days = ChronoUnit.DAYS.between(sowing.sow(), sowing.bedBy());
    long quickest = (long) Math.floor(crop.quickestDays());
    if (days < quickest && !fields.isBlank("sow")) {
      fields.doubt(
          "bed-by",
          days + " days after sow",
          crop.name() + " takes some " + quickest + " days even where all is at its best");
    }
    long cells = (long) sowing.trays() * crop.cells();
    if (sowing.plantsNeeded() > cells && !fields.isBlank("trays")) {
      fields.doubt(
          "plants-needed",
          "more than the " + cells + " cells of its trays",
          "more trays, or fewer plants");
    }
  }
}

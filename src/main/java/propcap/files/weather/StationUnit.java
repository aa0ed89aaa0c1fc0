package propcap.files.weather;

import org.jspecify.annotations.Nullable;

/**
 * What is said of a station's unit where its files do not tell it themselves.
 *
 * @param given null: nothing
 * @param isOption whether whoever asks has an option for it, which faults may then name
 */
public record StationUnit(@Nullable Degrees given, boolean isOption) {
  /** There is nothing but the files to say it. */
  public static final StationUnit OF_THE_FILES = new StationUnit(null, false);

  /** What the option of the weather command says; null where it was left out. */
  static StationUnit option(@Nullable Degrees given) {
    return new StationUnit(given, true);
  }

  /** How a file that was read in a unit is read in another. */
  String other(Degrees readAs) {
    return isOption
        ? readAs.readAs()
        : "read as degrees " + readAs + "; " + WeatherFile.otherUnit(readAs == Degrees.F);
  }

  /** How daily summaries are read, which never say their unit. */
  String ofSummaries() {
    return isOption
        ? "--unit C, --unit F or --unit tenths (of a degree C), as they were ordered"
        : "the record that propcap weather writes of them, which asks for it";
  }
}

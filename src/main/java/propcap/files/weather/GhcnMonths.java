package propcap.files.weather;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.regex.Pattern;
import propcap.files.text.FaultWords;
import propcap.files.text.Fields;

/**
 * GHCN-Daily in the fixed-width form of its {@code .dly} files, a line for each kind of value and
 * month, as its readme.txt (NOAA), section III, has it: the station in columns 1 to 11, the year in
 * 12 to 15, the month in 16 and 17, the element in 18 to 21; then for each of 31 days five columns
 * of value, and one each of measurement flag, quality flag and source flag. Temperatures are in
 * tenths of a degree C, a missing value is -9999, and so are days that the month has not; a quality
 * flag that is not blank tells that the value failed a check.
 */
record GhcnMonths() implements StationForm {
  private static final Pattern START = Pattern.compile("[A-Za-z0-9_-]{11}[0-9]{6}[A-Z0-9*]{4}.*");
  private static final int DAYS_FROM = 21;
  private static final int A_DAY = 8;
  private static final int VALUE = 5;
  private static final int QUALITY = 6;
  private static final int MOST_DAYS = 31;

  /** Flags at the end of a line are blanks, which are easily lost. */
  private static final int LEAST_LENGTH = DAYS_FROM + A_DAY * (MOST_DAYS - 1) + VALUE;

  private static final String MISSING = "-9999";

  static boolean isOne(StationRows.Row first) {
    return first.fields().size() == 1 && START.matcher(first.field(0)).matches();
  }

  @Override
  public String words() {
    return "GHCN-Daily, a month a line, tenths of a degree C";
  }

  @Override
  public boolean hasHeader() {
    return false;
  }

  @Override
  public Degrees unit() {
    return Degrees.TENTHS;
  }

  @Override
  public void read(StationRows.Row row, StationValues values) {
    String line = row.field(0);
    if (!isOne(row)) {
      values.fault(
          row,
          "no line of a month, but " + FaultWords.shown(String.join(",", row.fields())),
          "the station, such as 200303TMIN, then 31 days, as in the first line");
      return;
    }
    String element = line.substring(17, DAYS_FROM);
    boolean isMinimum = element.equals("TMIN");
    if (!values.isOfStation(row.spot(), line.substring(0, 11))
        || !(isMinimum || element.equals("TMAX"))) {
      return;
    }
    int year = Integer.parseInt(line.substring(11, 15));
    int month = Integer.parseInt(line.substring(15, 17));
    if (!Fields.isOfOurTimes(LocalDate.of(year, 1, 1))) {
      values.fault(row, "year is '" + line.substring(11, 15) + "'", "a year such as 2003");
    } else if (month < 1 || month > 12) {
      values.fault(row, "month is '" + line.substring(15, 17) + "'", "a month from 01 to 12");
    } else if (line.length() < LEAST_LENGTH) {
      values.fault(
          row,
          "a line of " + line.length() + " characters",
          "21 characters, then 8 for each of 31 days");
    } else {
      read(row, isMinimum, YearMonth.of(year, month), values);
    }
  }

  private static void read(
      StationRows.Row row, boolean isMinimum, YearMonth month, StationValues values) {
    String line = row.field(0) + " ".repeat(A_DAY);
    for (int day = 1; day <= MOST_DAYS; day++) {
      int at = DAYS_FROM + A_DAY * (day - 1);
      String value = line.substring(at, at + VALUE).strip();
      if (month.isValidDay(day)) {
        values.add(
            isMinimum,
            month.atDay(day),
            value,
            Degrees.TENTHS,
            line.substring(at + QUALITY, at + QUALITY + 1).strip(),
            row.spot());
      } else if (!value.equals(MISSING) && !value.isEmpty()) {
        values.fault(
            row,
            "%s of %s %s %s is %s"
                .formatted(
                    isMinimum ? "tmin" : "tmax",
                    day,
                    month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH),
                    month.getYear(),
                    FaultWords.shown(value)),
            MISSING + " after the month’s last day");
      }
    }
  }
}

package propcap.files.weather;

import java.util.List;

/**
 * GHCN-Daily with a row for each kind of value and day, as its readme-by_station.txt (NOAA) has it:
 * ID, date, element, value, measurement flag, quality flag, source flag, time of observation. A
 * station's file has no header, the service's yearly CSV form has one: ID, DATE, ELEMENT,
 * DATA_VALUE, M_FLAG, Q_FLAG, S_FLAG, OBS_TIME. Temperatures are in tenths of a degree C; a quality
 * flag that is not blank tells that the value failed a check.
 */
record GhcnDays(
    boolean hasHeader, int fields, int id, int date, int element, int value, int quality)
    implements StationForm {
  /** What a header must name. */
  static final List<String> COLUMNS = List.of("id", "date", "element", "data_value", "q_flag");

  static final GhcnDays WITHOUT_HEADER = new GhcnDays(false, 8, 0, 1, 2, 3, 5);

  /** By the columns of a header, in small letters. */
  static GhcnDays under(List<String> names) {
    return new GhcnDays(
        true,
        names.size(),
        names.indexOf("id"),
        names.indexOf("date"),
        names.indexOf("element"),
        names.indexOf("data_value"),
        names.indexOf("q_flag"));
  }

  @Override
  public String words() {
    return "GHCN-Daily, tenths of a degree C";
  }

  @Override
  public Degrees unit() {
    return Degrees.TENTHS;
  }

  @Override
  public void read(StationRows.Row row, StationValues values) {
    if (row.fields().size() <= value) {
      values.fault(
          row,
          "a row of " + row.fields().size() + " fields",
          fields + " fields" + (hasHeader ? ", as in the header" : ""));
      return;
    }
    boolean isMinimum = row.field(element).equals("TMIN");
    if (values.isOfStation(row.spot(), row.field(id))
        && (isMinimum || row.field(element).equals("TMAX"))) {
      StationForm.date(row, date, values)
          .ifPresent(
              day ->
                  values.add(
                      isMinimum,
                      day,
                      row.field(value),
                      Degrees.TENTHS,
                      row.field(quality),
                      row.spot()));
    }
  }
}

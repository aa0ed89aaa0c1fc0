package propcap.files.weather;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.StationRecord;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;

/**
 * A weather station's days as a weather service or a grower keeps them, in one file or several.
 *
 * @param forms what each file turned out to be
 * @param flagged how many values the service itself doubts and were left out, by its quality flag
 * @param leftOut values that cannot be: what was found, where, and what was done
 * @param warnings what can be but seldom is; none stops anything
 */
public record StationFile(
    StationRecord record,
    List<String> forms,
    Map<String, Integer> flagged,
    List<Fault> leftOut,
    List<Fault> warnings) {

  /**
   * Reads a station.
   *
   * @param unit what files are in that do not tell; null for degrees C in a plain table
   * @throws FaultsException with all that cannot be read; also where no temperature is left
   */
  public static StationFile read(List<Path> files, @Nullable Degrees unit) throws FaultsException {
    Faults faults = new Faults();
    StationFile read = read(files, StationUnit.option(unit), faults);
    faults.check();
    return read;
  }

  /** Reads a station and adds to the faults. */
  public static StationFile read(List<Path> files, StationUnit unit, Faults faults) {
    StationValues values = new StationValues(faults);
    List<StationForm> forms = new ArrayList<>();
    for (Path file : files) {
      StationForm.read(file, unit, values, faults).ifPresent(forms::add);
    }
    StationRecord record = values.record();
    if (!faults.any() && !forms.isEmpty()) {
      values.doubt(record, forms.get(0));
    }
    if (!faults.any() && record.span().isEmpty()) {
      faults.add(
          FilePosition.whole(files.get(0)),
          "no temperature in it",
          "days with TMIN and TMAX that stand");
    }
    return new StationFile(
        record,
        forms.stream().map(StationForm::words).toList(),
        values.flagged(),
        values.remarks(),
        faults.warnings());
  }
}

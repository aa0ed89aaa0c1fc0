package propcap.files.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import propcap.disk.WholeFile;
import propcap.farm.WeatherRecord;
import propcap.files.log.LogText;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.weather.WeatherFile;
import propcap.past.WrittenTray;

/**
 * A file of the grower's that the program writes: whole or not at all, and never in the place of
 * another without a copy of it.
 */
public final class NewFile {
  private NewFile() {}

  /** Writes a weather record; see {@link #write}. */
  public static List<Path> writeWeather(List<WeatherRecord.Day> days, Path file, boolean mayReplace)
      throws FaultsException, IOException {
    return write(WeatherFile.text(days), file, mayReplace);
  }

  /**
   * Writes a log of trays; see {@link #write}.
   *
   * @param trays in the plan's order, each with a number for a name
   * @param notes lines at its head that are no rows
   */
  public static List<Path> writeLog(
      List<WrittenTray> trays, List<String> notes, Path file, boolean mayReplace)
      throws FaultsException, IOException {
    return write(LogText.of(trays, notes), file, mayReplace);
  }

  /**
   * Writes a file in one step.
   *
   * @param mayReplace whether an older file of that name may give way; a copy of it is kept beside
   *     it
   * @return the file, and after it the copy of the older one if there was one
   * @throws FaultsException where there is an older one that may not be replaced
   * @throws IOException where it cannot be written
   */
  static List<Path> write(String text, Path file, boolean mayReplace)
      throws FaultsException, IOException {
    check(file, mayReplace);
    List<Path> written = new ArrayList<>(List.of(file));
    if (Files.exists(file)) {
      written.add(WholeFile.keep(file));
    }
    WholeFile.write(file, text);
    return written;
  }

  /**
   * Refuses a place where the file must not or cannot be written, before any work is done.
   *
   * @throws IOException where it cannot be
   */
  public static void check(Path file, boolean mayReplace) throws FaultsException, IOException {
    if (!mayReplace && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      Faults faults = new Faults();
      faults.add(
          FilePosition.whole(file),
          "there is such a file already",
          "another name, or --replace, which keeps a copy of it");
      throw new FaultsException(faults.sorted());
    }
    WholeFile.check(file);
  }
}

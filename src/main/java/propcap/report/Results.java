package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.study.Forecast;

/** A forecast's files in a folder of their own: all of them, or none. */
public final class Results {
  private Results() {}

  /**
   * Writes the report, the summary and the tables in the place of older ones, which stay whole if
   * anything fails before.
   *
   * @param version of this program, shown in the report and the summary
   * @return the files written, the report first
   * @throws IOException where they cannot be written, saying why
   * @throws IllegalArgumentException where a number of the forecast is not finite
   */
  public static List<Path> write(Forecast forecast, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("report.html", ReportPage.html(forecast, version));
    files.put(KnownResults.FORECAST.file(), SummaryJson.of(forecast, version));
    files.put("sowings.csv", Tables.sowings(forecast));
    files.put("places.csv", Tables.places(forecast));
    files.put("losses.csv", Tables.losses(forecast));
    files.put("hands.csv", Tables.hands(forecast));
    files.put("seasons.csv", Tables.seasons(forecast));
    return folder.write(files);
  }
}

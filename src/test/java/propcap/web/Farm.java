package propcap.web;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The tests' example in a folder of its own, small enough to be simulated at once. */
public final class Farm {
  public static final String PLAN =
      """
      id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until
      cabbage-1,cabbage,,2027-02-20,12,960,2027-04-15,2027-05-10,,
      lettuce-1,lettuce,,2027-03-01,12,880,2027-04-15,2027-05-05,,
      """;

  public static final String SCENARIO =
      """
      # The spring at a small farm, for tests.
      name: Small spring
      season: {start: 2027-01-11, end: 2027-07-04}   # as long as it takes
      crops: crops.yaml
      sowings: sowings.csv
      weather: weather.csv
      places:
        # Too small by far.
        - {name: Chamber, kind: chamber, spaces: 6, climate: {constant: 22 C}}   # the old one
        - {name: House, kind: table, spaces: 80, climate: {heat-to: 14 C, lift: 5, vent-at: 26 C}}
        - {name: Yard, kind: hardening, spaces: 80, climate: {outdoor: true}}
      """;

  /** The header and three years: the farm is read anew for each thing that is tried on it. */
  private static final int ROWS_OF_WEATHER = 1 + 366 + 2 * 365;

  private Farm() {}

  /** Writes it, and gives the scenario's file. */
  public static Path in(Path folder) throws IOException {
    Path example = Path.of("src/test/resources/propcap/example");
    List<String> weather = Files.readAllLines(example.resolve("weather.csv"));
    Files.write(folder.resolve("weather.csv"), weather.subList(0, ROWS_OF_WEATHER));
    String crops = Files.readString(example.resolve("crops.yaml"));
    Files.writeString(
        folder.resolve("crops.yaml"),
        crops.replaceAll("germinate-in: \\[.*]", "germinate-in: [Chamber]"));
    Files.writeString(folder.resolve("sowings.csv"), PLAN);
    return Files.writeString(folder.resolve("small.yaml"), SCENARIO);
  }

  /** What lies in a folder and below: a digest for each file. */
  public static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes is) throws IOException {
            files.put(folder.relativize(file).toString(), digest(Files.readAllBytes(file)));
            return FileVisitResult.CONTINUE;
          }
        });
    return files;
  }

  private static String digest(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}

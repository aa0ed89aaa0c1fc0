package propcap.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A grower of any size, made of the tests' example: its sowings over and over, a day later each
 * round of a week, in three varieties of each crop, and its places cut into many.
 */
public final class Nursery {
  private static final Path EXAMPLE = Path.of("src/test/resources/propcap/example");
  private static final int VARIETIES = 3;

  private final int places;
  private final double times;
  private final List<List<String>> lines;
  private final int[] trays;

  private Nursery(int sowings, int trays, int places) throws IOException {
    this.places = places;
    lines =
        Files.readAllLines(EXAMPLE.resolve("sowings.csv")).stream()
            .skip(1)
            .map(line -> List.of(line.split(",", -1)))
            .toList();
    int[] alike = IntStream.range(0, sowings).map(i -> alike(i, 4)).toArray();
    double all = Arrays.stream(alike).sum();
    this.trays = new int[sowings];
    double before = 0;
    for (int i = 0; i < sowings; i++) {
      double after = before + alike[i] * trays / all;
      this.trays[i] = Math.max(1, (int) (Math.round(after) - Math.round(before)));
      before = after;
    }
    times = trays / (double) lines.stream().mapToInt(line -> Integer.parseInt(line.get(4))).sum();
  }

  /**
   * Writes a grower's four files.
   *
   * @param places from 10 on
   * @return the scenario's
   */
  public static Path write(Path folder, int sowings, int trays, int places) throws IOException {
    Nursery nursery = new Nursery(sowings, trays, places);
    Files.copy(EXAMPLE.resolve("weather.csv"), folder.resolve("weather.csv"));
    Files.writeString(folder.resolve("crops.yaml"), nursery.crops());
    Files.writeString(folder.resolve("sowings.csv"), nursery.sowings());
    return Files.writeString(folder.resolve("scenario.yaml"), nursery.scenario());
  }

  /** How many places there are of which the example has one. */
  private int number(String place) {
    return switch (place) {
      case "Chamber" -> places / 10;
      case "Mats", "Yard" -> places / 5;
      default -> places - places / 10 - 2 * (places / 5);
    };
  }

  private String names(String place) {
    return IntStream.rangeClosed(1, number(place))
        .mapToObj(i -> place + " no " + i)
        .collect(Collectors.joining(", "));
  }

  private String scenario() throws IOException {
    List<String> written = new ArrayList<>();
    Pattern space = Pattern.compile("name: ([^,]*), kind: ([^,]*), spaces: (\\d+)");
    for (String line : Files.readAllLines(EXAMPLE.resolve("scenario.yaml"))) {
      var place = space.matcher(line);
      if (!place.find()) {
        written.add(line);
        continue;
      }
      int number = number(place.group(1));
      long spaces = (long) Math.ceil(Integer.parseInt(place.group(3)) * times / number);
      for (int i = 1; i <= number; i++) {
        written.add(place.replaceFirst("name: $1 no " + i + ", kind: $2, spaces: " + spaces));
      }
    }
    return String.join("\n", written) + "\n";
  }

  private String crops() throws IOException {
    String text = Files.readString(EXAMPLE.resolve("crops.yaml"));
    for (String place : List.of("Chamber", "Mats", "House 1")) {
      text = text.replaceAll(place + "(?=[],])", names(place));
    }
    int first = text.indexOf('\n') + 1;
    StringBuilder all = new StringBuilder(text.substring(0, first));
    for (int v = 1; v <= VARIETIES; v++) {
      all.append(text.substring(first).replaceAll("(?m)^  ([a-z]+):$", "  $1-" + v + ":"));
    }
    return all.toString();
  }

  private String sowings() {
    StringBuilder csv = new StringBuilder();
    csv.append("id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until\n");
    for (int i = 0; i < trays.length; i++) {
      List<String> line = lines.get(i % lines.size());
      int round = i / lines.size();
      int variety = 1 + round % VARIETIES;
      csv.append(
          String.format(
              Locale.ROOT,
              "%s/%d,%s-%d,%s-%d,%s,%d,%d,%s\n",
              line.get(0),
              round,
              line.get(1),
              variety,
              line.get(2),
              variety,
              later(line.get(3), round),
              trays[i],
              Math.max(1, alike(i, 5) * trays[i] / alike(i, 4)),
              line.subList(6, 10).stream()
                  .map(date -> later(date, round))
                  .collect(Collectors.joining(","))));
    }
    return csv.toString();
  }

  private int alike(int sowing, int column) {
    return Integer.parseInt(lines.get(sowing % lines.size()).get(column));
  }

  private static String later(String date, int round) {
    return date.isEmpty() ? "" : LocalDate.parse(date).plusDays(round % 7).toString();
  }
}

package propcap.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;

/**
 * One kind of what a grower hands in: sound files of it, and the command that reads them.
 *
 * @param files by name, a byte a character
 * @param mutated the names of those that are attacked; none: the command's own values are
 * @param command in which {@code @} stands for the folder
 */
record Attacked(
    String kind, Map<String, String> files, List<String> mutated, List<String> command) {

  private static final int DAYS = 100;

  static List<Attacked> all() throws IOException {
    Map<String, String> farm = farm();
    List<String> run =
        List.of("run", "@/other.yaml", "--seasons", "3", "--threads", "1", "--out", "@/out");
    List<Attacked> all = new ArrayList<>();
    all.add(new Attacked("a scenario, and one that changes it", farm, yaml(), run));
    all.add(new Attacked("a crop list", farm, List.of("crops.yaml"), run));
    all.add(new Attacked("a plan of sowings", farm, List.of("sowings.csv"), run));
    all.add(new Attacked("a weather record", farm, List.of("weather.csv"), run));
    all.add(changes(farm));
    all.add(frost(farm));
    all.add(log());
    all.add(season(farm));
    all.add(
        new Attacked(
            "counts of a germination test",
            Map.of("counts.csv", counts()),
            List.of("counts.csv"),
            List.of("fit", "germination", "@/counts.csv", "--out", "@/out")));
    all.add(station("a station's rows without a header", "a.csv", String.join("\n", rows())));
    all.add(station("the same under a header", "y.csv", HEADER + String.join("\n", rows())));
    all.add(station("a month a line", "s.dly", months()));
    all.add(station("daily summaries", "s.csv", summaries()));
    all.add(station("a packed file", "p.csv.gz", packed(String.join("\n", rows()))));
    all.add(
        new Attacked(
            "monthly means",
            Map.of("n.csv", Files.readString(Path.of("demo-data/normals.csv"))),
            List.of("n.csv"),
            List.of(
                "weather", "--normals", "@/n.csv", "--years", "2", "--to", "@/out/weather.csv")));
    all.addAll(settings(farm));
    return all;
  }

  private static List<String> yaml() {
    return List.of("other.yaml", "scenario.yaml");
  }

  private static String resource(String name) throws IOException {
    try (InputStream in = Propcap.class.getResourceAsStream("/propcap/files/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    }
  }

  private static Map<String, String> farm() throws IOException {
    Map<String, String> farm = new TreeMap<>();
    for (String name : List.of("scenario.yaml", "crops.yaml", "sowings.csv")) {
      farm.put(name, resource(name));
    }
    farm.put("weather.csv", weather("date,tmin,tmax\n", 1, 0));
    farm.put(
        "other.yaml",
        """
        extends: scenario.yaml
        name: A second chamber
        places:
          - {name: Chamber 2, like: Chamber, spaces: 30, after: Chamber,
             cost: {buy: 5200, lasts: 12 years, keep: 150/year, run: 3.60 EUR/day}}
          - {name: House 1, spaces: 300}
        labour: {hours: 12/day, minutes: {sow: 4/tray, pot-on: 0.35/plant}}
        money:
          currency: EUR
          plants:
            tomato: {worth: 0.95, late: 0.40, short: 1.20, tray: 6.50}
            default: {worth: 0.30, late: 0.10, short: 0.45}
          tray: 1.10
          pot-tray: 2.40 EUR
          discount: 6 %
        crops:
          tomato: {emergence: {base: 10 C}, germinate-in: [Chamber]}
        sowings:
          - {match: "tomato*", shift: -7 days}
          - {match: pepper-1, trays: 40}
        """);
    return farm;
  }

  private static double minC(LocalDate day) {
    return Math.round(8 - 12 * Math.cos(2 * Math.PI * (day.getDayOfYear() - 15) / 365))
        + day.getDayOfMonth() % 7 / 10.0;
  }

  /** Two years, in a unit that is so many times a degree C, from so much on. */
  private static String weather(String header, double times, double plus) {
    StringBuilder rows = new StringBuilder(header);
    LocalDate end = LocalDate.of(2003, 1, 1);
    for (LocalDate day = LocalDate.of(2001, 1, 1); day.isBefore(end); day = day.plusDays(1)) {
      double low = times * minC(day) + plus;
      rows.append(
          String.format(Locale.ROOT, "%s,%.1f,%.1f%n", day, low, low + times * 9)
              .replace("\r", ""));
    }
    return rows.toString();
  }

  private static Attacked frost(Map<String, String> farm) {
    Map<String, String> files = new TreeMap<>(farm);
    files.put("f.csv", weather("date,tmin-f,tmax-f\n", 1.8, 32));
    return new Attacked(
        "a weather record in degrees F",
        files,
        List.of("f.csv"),
        List.of("frost", "@/f.csv", "--crops", "@/crops.yaml", "--out", "@/out"));
  }

  private static Attacked changes(Map<String, String> farm) {
    Map<String, String> files = new TreeMap<>(farm);
    files.put(
        "changes.csv",
        """
        name,spaces of Chamber,shift of tomato*,trays of pepper-1,hours
        smaller,40,,,
        later,,7 days,120 %,
        both,40,-7 days,40,12/day
        """);
    return new Attacked(
        "a table of changes",
        files,
        List.of("changes.csv"),
        with(
            "sweep @/scenario.yaml --changes @/changes.csv --seasons 3 --threads 1",
            List.of("--out", "@/out")));
  }

  private static Attacked season(Map<String, String> farm) {
    Map<String, String> files = new TreeMap<>(farm);
    files.put(
        "log.csv",
        """
        sowing,tray,event,date,plants,place,trays
        lettuce-1,,sown,2027-02-15,128,Mats,
        lettuce-1,1 to 4,counted,2027-02-18,40.5,,
        lettuce-1,,off-heat,2027-02-22,115,House 1,12
        # half of them
        lettuce-1,3,outbreak,2027-03-02,60,,
        lettuce-1,24,thrown-out,2027-03-02,10,,
        lettuce-1,again,sown,2027-03-04,,,
        tomato-1,,sown,2027-03-01,,Chamber,
        tomato-1,1-16,off-heat,2027-03-12,66.5,,
        lettuce-1,,ready,2027-03-20,,,6
        lettuce-1,,moved-out,2027-03-22,,Yard,6
        tomato-1,,potted-on,2027-04-05,,House 1,4
        lettuce-1,,planted-out,2027-04-07,,,
        """);
    StringBuilder days = new StringBuilder("date,tmin,tmax\n");
    for (LocalDate day = LocalDate.of(2027, 1, 11);
        day.getMonthValue() < 5;
        day = day.plusDays(1)) {
      days.append(String.format(Locale.ROOT, "%s,%.1f,%.1f\n", day, minC(day), minC(day) + 9));
    }
    files.put("this-year.csv", days.toString());
    return new Attacked(
        "a season so far",
        files,
        List.of("log.csv", "this-year.csv"),
        List.of(
            "run",
            "@/other.yaml",
            "--seasons",
            "3",
            "--threads",
            "1",
            "--out",
            "@/out",
            "--log",
            "@/log.csv",
            "--weather-so-far",
            "@/this-year.csv",
            "--on",
            "2027-04-10"));
  }

  private static Attacked log() throws IOException {
    Map<String, String> files = new TreeMap<>(farm());
    StringBuilder log = new StringBuilder("sowing,tray,event,date,plants\n");
    LocalDate start = LocalDate.of(2001, 2, 15);
    for (int tray = 1; tray <= 6; tray++) {
      LocalDate sown = start.plusDays(7L * tray);
      log.append("lettuce-1,%d,sown,%s,128%n".formatted(tray, sown).replace("\r", ""))
          .append("lettuce-1,%d,off-heat,%s,115%n".formatted(tray, sown.plusDays(6)))
          .append("lettuce-1,%d,ready,%s,%d%n".formatted(tray, sown.plusDays(31), 112 - tray));
    }
    files.put("log.csv", log.toString().replace("\r", ""));
    return new Attacked(
        "a log of trays",
        files,
        List.of("log.csv"),
        List.of("fit", "stages", "@/log.csv", "--scenario", "@/scenario.yaml", "--out", "@/out"));
  }

  /** Two trays at two temperatures, by the day. */
  private static String counts() {
    StringBuilder counts = new StringBuilder("lot,crop,temperature,tray,seeds,time,emerged\n");
    int[] emerged = {0, 0, 3, 17, 31, 38, 41, 42, 42};
    for (int tempC : new int[] {16, 22}) {
      for (int tray = 1; tray <= 2; tray++) {
        for (int n = 0; n < emerged.length; n++) {
          counts.append(
              "Z-27,zinnia,%d C,%d,50,%d,%d%n"
                  .formatted(tempC, tray, tempC == 16 ? 2 * n + 2 : n + 1, emerged[n]));
        }
      }
    }
    return counts.toString().replace("\r", "");
  }

  private static final String HEADER = "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n";

  private static Attacked station(String kind, String name, String text) {
    return new Attacked(
        kind,
        Map.of(name, text),
        List.of(name),
        List.of("weather", "@/" + name, "--unit", "C", "--to", "@/out/weather.csv"));
  }

  private static List<LocalDate> days() {
    return LocalDate.of(2003, 1, 1).datesUntil(LocalDate.of(2003, 1, 1).plusDays(DAYS)).toList();
  }

  private static List<String> rows() {
    List<String> rows = new ArrayList<>();
    for (LocalDate day : days()) {
      String date = day.toString().replace("-", "");
      long tenths = Math.round(10 * minC(day));
      rows.add("XX000000001," + date + ",TMIN," + tenths + ",,,7,");
      rows.add("XX000000001," + date + ",TMAX," + (tenths + 90) + ",,,7,");
    }
    return rows;
  }

  private static String months() {
    Map<String, StringBuilder> lines = new LinkedHashMap<>();
    for (LocalDate day : days()) {
      for (String element : List.of("TMAX", "TMIN")) {
        String month = String.format(Locale.ROOT, "%tY%<tm%s", day, element);
        long tenths = Math.round(10 * minC(day)) + (element.equals("TMAX") ? 90 : 0);
        lines
            .computeIfAbsent(month, m -> new StringBuilder("XX000000001" + m))
            .append(String.format(Locale.ROOT, "%5d  7", tenths));
      }
    }
    StringBuilder all = new StringBuilder();
    for (StringBuilder line : lines.values()) {
      while (line.length() < 21 + 8 * 31) {
        line.append("-9999   ");
      }
      all.append(line).append('\n');
    }
    return all.toString();
  }

  private static String summaries() {
    StringBuilder rows =
        new StringBuilder("\"STATION\",\"DATE\",\"NAME\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\"\n");
    for (LocalDate day : days()) {
      rows.append(
          "\"XX1\",\"%s\",\"HERE, NOWHERE\",\"%.1f\",\",,7,0700\",\"%.1f\"\n"
              .formatted(day, minC(day) + 9, minC(day)));
    }
    return rows.toString();
  }

  private static String packed(String text) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toString(StandardCharsets.ISO_8859_1);
  }

  /** Commands whose own values are attacked. */
  private static List<Attacked> settings(Map<String, String> farm) throws IOException {
    String kind = "a command's settings";
    Map<String, String> means = Map.of("n.csv", Files.readString(Path.of("demo-data/normals.csv")));
    List<String> to = List.of("--out", "@/out");
    return List.of(
        new Attacked(
            kind,
            farm,
            List.of(),
            with("run @/other.yaml --seasons 3 --threads 1 --seed 7 --precision 40%", to)),
        new Attacked(
            kind,
            farm,
            List.of(),
            with("frost @/weather.csv --frost-at 0C --threshold 30F --from 2027-01-01", to)),
        new Attacked(kind, log().files(), List.of(), with(LOG + " --list-weighs 20", to)),
        new Attacked(
            kind,
            means,
            List.of(),
            with(
                "weather --normals @/n.csv --years 2 --first-year 2001 --seed 1 --unit C",
                List.of("--to", "@/out/weather.csv"))));
  }

  private static final String LOG = "fit stages @/log.csv --scenario @/scenario.yaml";

  private static List<String> with(String command, List<String> more) {
    List<String> all = new ArrayList<>(List.of(command.split(" ")));
    all.addAll(more);
    return all;
  }
}

package propcap.web.typed;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import propcap.files.scenario.SowingPlan;

/**
 * What growers write above the columns of a sowing plan. The first words of each are the page's own
 * and the files' key, the others common practice.
 */
public final class PastedHeading {
  /** By column. */
  private static final Map<String, List<String>> WORDS = new LinkedHashMap<>();

  static {
    WORDS.put("id", words("sowing, id, sowing id, sowing name, sowing no, sowing number, batch"));
    WORDS.put("crop", words("crop, crop name, variety, cultivar, crop and variety, plant"));
    WORDS.put("lot", words("seed lot, lot, lot no, lot number, seed lot no, seed lot number"));
    WORDS.put(
        "sow",
        words(
            "sow on, sow, sow date, sowing date, date of sowing, date sown, sown, sown on,"
                + " seed on, seed date, seeding date, date seeded, seeded"));
    WORDS.put(
        "trays",
        words("trays, tray, number of trays, no of trays, flats, number of flats, no of flats"));
    WORDS.put(
        "plants-needed",
        words(
            "plants needed, plants, plants required, plants wanted, number of plants, no of plants,"
                + " transplants, transplants needed, transplants required"));
    WORDS.put(
        "bed-from",
        words("bed from, bed ready, bed ready from, bed free from, plant from, plant out from"));
    WORDS.put("bed-by", words("bed by, plant by, plant out by, transplant by"));
    WORDS.put(
        "bed-until", words("bed until, bed till, plant until, plant out until, transplant until"));
    WORDS.put(
        "resow-until",
        words("sow again until, resow until, sow again by, resow by, latest resowing"));
    WORDS.put("germinate-in", words("germinate in"));
    WORDS.put("sow-from", words("sow from"));
    WORDS.put("sow-to", words("sow to"));
    WORDS.put("goal", words("goal"));
  }

  /** The columns that every plan has, in the order of the page. */
  public static final List<String> COLUMNS = SowingPlan.COLUMNS;

  private PastedHeading() {}

  private static List<String> words(String list) {
    return Stream.of(list.split(",")).map(PastedHeading::bare).toList();
  }

  /** Without case, spaces and signs. */
  private static String bare(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "");
  }

  /** Whether a row has the words of some columns, and neither a date nor a number. */
  static boolean isOne(List<String> cells, int least) {
    long known =
        columns(cells, new HashSet<>(WORDS.keySet())).stream().filter(c -> !c.isEmpty()).count();
    return known >= least && cells.stream().noneMatch(c -> c.matches("[\\d=+-].*"));
  }

  /**
   * The column that each cell is the heading of; empty for one of which there is none. Where two
   * mean the same, it is the one in the page's own words, or else the first.
   *
   * @param has the columns of the plan
   */
  static List<String> columns(List<String> cells, Set<String> has) {
    List<String> columns = new ArrayList<>(Collections.nCopies(cells.size(), ""));
    WORDS.forEach(
        (column, words) -> {
          int best = -1;
          int rank = Integer.MAX_VALUE;
          for (int i = 0; i < cells.size(); i++) {
            String bare = bare(cells.get(i));
            int at = bare.equals(bare(column)) ? 0 : words.indexOf(bare);
            if (at >= 0 && at < rank) {
              best = i;
              rank = at;
            }
          }
          if (best >= 0 && has.contains(column)) {
            columns.set(best, column);
          }
        });
    return columns;
  }
}

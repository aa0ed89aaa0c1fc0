package propcap.disk;

import java.util.regex.Pattern;

/**
 * A cell of a CSV table. A spreadsheet takes what begins with {@code = + - @} for a formula, which
 * may call a program; behind an apostrophe it is text. Names are written so, and read back without.
 * The list of beginnings is that of the Open Worldwide Application Security Project, "CSV
 * Injection", less what a name of one line cannot begin with.
 */
public final class TableCell {
  private static final Pattern FORMULA = Pattern.compile("'*[=+@-].*", Pattern.DOTALL);
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

  private TableCell() {}

  /** A text as it is written; a number stays one. */
  public static String harmless(String text) {
    return isFormula(text) ? "'" + text : text;
  }

  /** The text of a cell that was written so. */
  public static String meant(String cell) {
    return cell.startsWith("'") && isFormula(cell) ? cell.substring(1) : cell;
  }

  private static boolean isFormula(String text) {
    return FORMULA.matcher(text).matches() && !NUMBER.matcher(text).matches();
  }
}

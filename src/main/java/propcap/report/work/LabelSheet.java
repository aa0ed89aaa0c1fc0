package propcap.report.work;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sheet of stick-on labels as it is sold: so many labels of so large a size, without gaps, in the
 * middle of an A4 page.
 */
public record LabelSheet(double widthMm, double heightMm, int columns, int rows) {
  /** A common size of address labels, 24 to a page. */
  public static final LabelSheet COMMON = new LabelSheet(70, 37, 3, 8);

  private static final double PAGE_WIDTH_MM = 210;
  private static final double PAGE_HEIGHT_MM = 297;

  /** Smaller than this, what must stand on a label cannot be read. */
  private static final double LEAST_WIDTH_MM = 38;

  private static final double LEAST_HEIGHT_MM = 21;

  private static final Pattern SIZE =
      Pattern.compile("([0-9]{1,3}(?:\\.[0-9]{1,2})?) ?x ?([0-9]{1,3}(?:\\.[0-9]{1,2})?) ?mm");

  public LabelSheet {
    if (columns < 1 || rows < 1) {
      throw new IllegalArgumentException("a sheet has at least one column and one row of labels");
    }
    if (widthMm < LEAST_WIDTH_MM || heightMm < LEAST_HEIGHT_MM) {
      throw new IllegalArgumentException(
          "a label of " + mm(widthMm, heightMm) + " is too small to read; the least is 38x21mm");
    }
    if (widthMm * columns > PAGE_WIDTH_MM || heightMm * rows > PAGE_HEIGHT_MM) {
      throw new IllegalArgumentException(
          columns + " x " + rows + " labels of " + mm(widthMm, heightMm) + " do not fit on A4");
    }
  }

  /**
   * Labels of a size written as {@code 70x37mm}.
   *
   * @throws IllegalArgumentException where it is no size, or so many do not fit on A4
   */
  public static LabelSheet of(String size, int columns, int rows) {
    Matcher written = SIZE.matcher(size.strip());
    if (!written.matches()) {
      throw new IllegalArgumentException("'" + size + "' is no size of label such as 70x37mm");
    }
    return new LabelSheet(
        Double.parseDouble(written.group(1)), Double.parseDouble(written.group(2)), columns, rows);
  }

  /** Its size as it is written, such as {@code 70x37mm}. */
  public String size() {
    return mm(widthMm, heightMm);
  }

  private static String mm(double width, double height) {
    return String.format(Locale.ROOT, "%sx%smm", bare(width), bare(height));
  }

  private static String bare(double mm) {
    return mm == Math.rint(mm) ? Integer.toString((int) mm) : Double.toString(mm);
  }

  public int labels() {
    return columns * rows;
  }

  /** The page's margin at the left and the right. */
  public String sideMm() {
    return bare(Math.round(50 * (PAGE_WIDTH_MM - widthMm * columns)) / 100.0);
  }

  /** The page's margin at the top and the bottom. */
  public String topMm() {
    return bare(Math.round(50 * (PAGE_HEIGHT_MM - heightMm * rows)) / 100.0);
  }

  public String width() {
    return bare(widthMm);
  }

  public String height() {
    return bare(heightMm);
  }
}

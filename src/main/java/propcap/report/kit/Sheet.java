package propcap.report.kit;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/** A table of a page, in text. */
public record Sheet(String title, String caption, List<Column> columns, List<Row> rows) {
  private static final int CARD_COLUMNS = 4;
  private static final int FEW_COLUMNS = 4;
  private static final int MANY_COLUMNS = 6;
  private static final int LONG = 28;

  /** Rows of a table that is folded on a phone, where each takes a finger's breadth or more. */
  private static final int MANY_ROWS = 20;

  /** The same of one that stands below a chart of what is in it. */
  private static final int ROWS_BELOW_CHART = 4;

  public Sheet {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /** What a column holds, and below it the unit. */
  public record Column(String head, String unit, boolean isNumber) {
    public static Column words(String head) {
      return new Column(head, "", false);
    }

    public static Column number(String head, String unit) {
      return new Column(head, unit, true);
    }

    /** The same in a line, beside each number where a row is shown as a card. */
    public String label() {
      return unit.isEmpty() ? head : head + ", " + unit;
    }
  }

  /** A row: its name, and a cell for each further column. */
  public record Row(String name, String below, List<Cell> cells) {
    public Row {
      cells = List.copyOf(cells);
    }

    public Row(String name, List<Cell> cells) {
      this(name, "", cells);
    }
  }

  /**
   * A cell, with what stands small below it.
   *
   * @param mark that is drawn before it, see {@link SafetyWords#mark}; empty: none
   */
  public record Cell(String text, String below, boolean isStrong, int shade, String mark) {
    /** There is nothing to say. */
    public static final Cell NONE = of("–");

    public static Cell of(String text) {
      return new Cell(text, "", false, 0, "");
    }

    public static Cell of(String text, String below) {
      return new Cell(text, below, false, 0, "");
    }

    /** A mean with half its interval, and below it 8 springs of 10. */
    public static Cell level(Stat stat) {
      return of(Words.estimate(stat), Words.range(stat));
    }

    /** The same in money; a dash where there is none. */
    public static Cell money(@Nullable Stat stat) {
      return stat == null ? NONE : of(Money.level(stat), Words.range(stat));
    }

    /** Bold where it is clearly more or less. */
    public static Cell of(Difference difference) {
      return of(Words.difference(difference)).strongIf(difference.isClear());
    }

    /** The same in money; a dash where there is none. */
    public static Cell money(@Nullable Difference difference) {
      return difference == null ? NONE : of(Money.bare(difference)).strongIf(difference.isClear());
    }

    /** This cell, in bold where something is so. */
    public Cell strongIf(boolean stands) {
      return new Cell(text, below, stands, shade, mark);
    }

    /** This cell on a ground from white, 0, to dark, 5. */
    public Cell shaded(int newShade) {
      return new Cell(text, below, isStrong, newShade, mark);
    }

    /** This cell with a mark before it. */
    public Cell marked(String shape) {
      return new Cell(text, below, isStrong, shade, shape);
    }
  }

  /** Whether it is folded where there is little room. */
  public boolean isLong(boolean isBelowChart) {
    return rows.size() > (isBelowChart ? ROWS_BELOW_CHART : MANY_ROWS);
  }

  /** What stands for it while it is folded. */
  public String summary() {
    return title + " " + Words.plural(rows.size(), "row");
  }

  /**
   * How the table looks as a whole: type is smaller where there are many columns, and where there
   * is little room each row of several is a card.
   */
  public String look() {
    boolean isShaded = rows.stream().flatMap(r -> r.cells().stream()).anyMatch(c -> c.shade() > 0);
    return "sheet"
        + (columns.size() >= CARD_COLUMNS || hasLongWords() ? " cards" : "")
        + (columns.size() <= FEW_COLUMNS ? " fit" : columns.size() > MANY_COLUMNS ? " small" : "")
        + (isShaded ? " grid" : "");
  }

  private boolean isLong(int cell) {
    return rows.stream().anyMatch(r -> r.cells().get(cell).text().length() > LONG);
  }

  private boolean hasLongWords() {
    return IntStream.range(0, columns.size() - 1)
        .anyMatch(c -> !columns.get(c + 1).isNumber() && isLong(c));
  }

  /** How a cell looks. */
  public String look(Row row, int cell) {
    int shade = row.cells().get(cell).shade();
    return (columns.get(cell + 1).isNumber() ? "n" : isLong(cell) ? "words" : "")
        + (shade > 0 ? " shade" + shade : "");
  }
}

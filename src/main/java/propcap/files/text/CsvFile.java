package propcap.files.text;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import propcap.disk.TableCell;

/** A table of a grower's, a map from column to text for each row. */
public final class CsvFile {
  private final SourceText source;
  private final List<String> columns;
  private final List<String> needed;
  private final int mostRows;
  private final Faults faults;
  private final List<Node.Keyed> rows = new ArrayList<>();
  private List<String> header = List.of();
  private boolean lacksColumns;
  private boolean open;

  /**
   * Reads a table.
   *
   * @param needed columns that the header must name, in any order
   * @param optional columns that it may name
   */
  public CsvFile(
      SourceText source, List<String> needed, List<String> optional, int mostRows, Faults faults) {
    this(source, needed, optional, mostRows, faults, reader());
  }

  private CsvFile(
      SourceText source,
      List<String> needed,
      List<String> optional,
      int mostRows,
      Faults faults,
      CsvReader.CsvReaderBuilder reader) {
    this.source = source;
    this.needed = needed;
    this.columns = Stream.concat(needed.stream(), optional.stream()).toList();
    this.mostRows = mostRows;
    this.faults = faults;
    read(reader);
  }

  /** Reads a table of these columns; empty where there is none, which is reported. */
  public static Optional<CsvFile> read(
      Path file, List<String> needed, List<String> optional, int mostRows, Faults faults) {
    return SourceText.read(file, FilePosition.whole(file), faults)
        .map(source -> new CsvFile(source, needed, optional, mostRows, faults));
  }

  /** Reads a table in which lines that begin with # are notes. */
  public static CsvFile withNotes(
      SourceText source, List<String> needed, List<String> optional, int mostRows, Faults faults) {
    return new CsvFile(
        source, needed, optional, mostRows, faults, reader().commentStrategy(CommentStrategy.SKIP));
  }

  /** The names of a table's columns, before it is known which of them it should have. */
  public static List<String> headerOf(SourceText source) {
    String header = source.text().lines().filter(l -> !l.isBlank()).findFirst().orElse("");
    return Stream.of(header.split(",", -1)).map(n -> n.replace("\"", "").strip()).toList();
  }

  /** In the file's order; a row that could not be read is left out. */
  public List<Node.Keyed> rows() {
    return rows;
  }

  /** The fields of each row that could be read. */
  public List<Fields> fields() {
    return rows.stream().map(row -> new Fields("", row.spot(), row, columns, faults)).toList();
  }

  /** Whether there were rows that could not be read. */
  public boolean isOpen() {
    return open;
  }

  public Path file() {
    return source.file();
  }

  private void read(CsvReader.CsvReaderBuilder reader) {
    int line = 0;
    try (CsvReader<CsvRecord> csv = reader.ofCsvRecord(source.text());
        CloseableIterator<CsvRecord> records = csv.iterator()) {
      while (records.hasNext() && !headerless()) {
        CsvRecord row = records.next();
        line = (int) row.getStartingLineNumber();
        FilePosition spot = new FilePosition(source.file(), line, 0);
        List<String> fields =
            row.getFields().stream().map(String::strip).map(TableCell::meant).toList();
        if (header.isEmpty()) {
          readHeader(spot, fields);
        } else if (rows.size() == mostRows) {
          open = true;
          faults.add(spot, "more than " + mostRows + " rows", "a shorter table");
          return;
        } else if (faults.isFull(source.file())) {
          open = true;
          return;
        } else {
          readRow(spot, fields);
        }
      }
    } catch (CsvParseException | IOException e) {
      open = true;
      faults.add(
          new FilePosition(source.file(), line + 1, 0),
          "from here on this cannot be read as CSV",
          "fields parted by commas, every quote closed and at most a page of text in each");
    }
  }

  private void readHeader(FilePosition spot, List<String> fields) {
    header = fields;
    String right = "the header " + String.join(",", needed);
    if (fields.stream().noneMatch(columns::contains)) {
      open = true;
      String parted =
          fields.get(0).matches(".*[;\t].*")
              ? ", parted by commas: a spreadsheet asks for the separator when it saves CSV"
              : "";
      faults.add(
          spot, "no header but " + FaultWords.shown(fields.get(0)), right + ifNeeded() + parted);
      return;
    }
    Set<String> seen = new HashSet<>();
    Set<String> meant = new HashSet<>();
    for (String name : fields) {
      if (!seen.add(name)) {
        faults.add(spot, "column " + FaultWords.shown(name) + " again", "each column once");
      } else if (!columns.contains(name)) {
        FaultWords.nearest(name, columns).ifPresent(meant::add);
        faults.add(
            spot, "unknown column " + FaultWords.shown(name), FaultWords.oneOf(name, columns));
      }
    }
    for (String column : needed) {
      if (!seen.contains(column)) {
        lacksColumns = true;
        if (!meant.contains(column)) {
          faults.add(spot, "no column " + column, right);
        }
      }
    }
  }

  private String ifNeeded() {
    List<String> optional = columns.subList(needed.size(), columns.size());
    return optional.isEmpty() ? "" : " and, if need be, " + String.join(",", optional);
  }

  private boolean headerless() {
    return !header.isEmpty() && header.stream().noneMatch(columns::contains);
  }

  private void readRow(FilePosition spot, List<String> fields) {
    if (fields.stream().allMatch(String::isEmpty)) {
      return;
    }
    if (fields.size() != header.size()) {
      open = true;
      faults.add(
          spot,
          "a row of " + fields.size() + " fields",
          header.size() + " fields, as in the header");
      return;
    }
    Map<String, Node.Entry> cells = new LinkedHashMap<>();
    for (int i = 0; i < fields.size(); i++) {
      if (columns.contains(header.get(i))) {
        Node.Text cell = new Node.Text(spot, fields.get(i));
        cells.putIfAbsent(header.get(i), new Node.Entry(spot, cell));
      }
    }
    rows.add(new Node.Keyed(spot, cells, lacksColumns));
  }

  /** Rows may be longer or shorter than others; every quote that is opened is closed. */
  public static CsvReader.CsvReaderBuilder reader() {
    return CsvReader.builder()
        .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
        .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
        .allowUnclosedQuote(false);
  }
}

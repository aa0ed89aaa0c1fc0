package propcap.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.Crop;
import propcap.files.scenario.CropBook;

/** A row of a published table, as printed, and the entry of the crop list that it is about. */
record PublishedRow(Map<String, String> cells) {
  static final CropBook LIST = CropBook.ofPropcap();

  /** The rows of a comma-separated table, which says above its columns where it is from. */
  static List<PublishedRow> of(String file) {
    List<String> lines;
    try (InputStream in = PublishedRow.class.getResourceAsStream("/propcap/evidence/" + file)) {
      lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    List<String[]> rows =
        lines.stream().filter(l -> !l.startsWith("#")).map(l -> l.split(",", -1)).toList();
    List<PublishedRow> published = new ArrayList<>();
    for (String[] row : rows.subList(1, rows.size())) {
      Map<String, String> byColumn = new LinkedHashMap<>();
      for (int i = 0; i < row.length; i++) {
        byColumn.put(rows.get(0)[i], row[i]);
      }
      published.add(new PublishedRow(byColumn));
    }
    return published;
  }

  String text(String column) {
    return cells.getOrDefault(column, "");
  }

  boolean has(String column) {
    return !text(column).isEmpty();
  }

  double number(String column) {
    return Double.parseDouble(text(column));
  }

  String name() {
    return text("crop");
  }

  CropBook.Entry entry() {
    return LIST.named(name()).orElseThrow();
  }

  Crop crop() {
    return entry().crop();
  }

  /** Whether the entry names a source. */
  boolean isSourcedBy(String tag) {
    return entry().sources().stream().anyMatch(s -> s.tag().equals(tag));
  }

  @Override
  public String toString() {
    return String.join(" ", cells.values());
  }
}

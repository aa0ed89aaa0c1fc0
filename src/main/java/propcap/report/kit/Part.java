package propcap.report.kit;

import java.util.List;

/** A part of an answer's page: what it says in words, then its pictures, then its tables. */
public record Part(
    String id,
    String heading,
    List<String> verdicts,
    List<String> sentences,
    List<Figure> figures,
    List<Sheet> sheets) {

  public Part {
    verdicts = List.copyOf(verdicts);
    sentences = List.copyOf(sentences);
    figures = figures.stream().filter(f -> !f.svg().isEmpty()).toList();
    sheets = sheets.stream().filter(s -> !s.rows().isEmpty()).toList();
  }

  /** Without sentences and pictures. */
  public Part(String id, String heading, List<String> verdicts, List<Sheet> sheets) {
    this(id, heading, verdicts, List.of(), List.of(), sheets);
  }

  /** A chart and what stands above it; one without a drawing is left out. */
  public record Figure(String title, String caption, String svg) {}
}

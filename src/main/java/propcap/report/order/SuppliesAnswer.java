package propcap.report.order;

import java.util.LinkedHashMap;
import java.util.Map;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.order.Supplies;
import propcap.study.order.Supplies.Kind;

/** The order list as a page, a table and a file for other programs. */
public record SuppliesAnswer(Supplies supplies) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "order", "-order", "order.json", "scenario chance sowings lots", "order.html order.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines().add(OrderWords.verdict(supplies));
    lines.add(OrderWords.safe(supplies));
    OrderWords.beyond(supplies).ifPresent(lines::add);
    lines.add(OrderWords.changes(supplies));
    lines.add(
        "Order: "
            + OrderWords.total(supplies, Kind.SEED)
            + " of "
            + Words.plural(supplies.lots().size(), "lot")
            + ", "
            + OrderWords.total(supplies, Kind.TRAYS)
            + ", "
            + OrderWords.total(supplies, Kind.POTS)
            + ", "
            + OrderWords.total(supplies, Kind.MIX)
            + ", "
            + OrderWords.total(supplies, Kind.LABELS));
    return lines.endingWith(
        supplies.scenario().name()
            + ": "
            + Words.plural(supplies.seasons(), "spring")
            + ", seed "
            + supplies.settings().seed());
  }

  @Override
  public Map<String, String> files(String version) {
    OrderTables tables = new OrderTables(supplies);
    Map<String, String> files = new LinkedHashMap<>();
    files.put("order.html", page(version).html());
    files.put("order.csv", tables.csv());
    files.put(kind().file(), tables.json(version));
    return files;
  }

  @Override
  public AnswerPage page(String version) {
    return OrderPage.of(supplies, version);
  }
}

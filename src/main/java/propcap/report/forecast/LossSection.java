package propcap.report.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.farm.Loss;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.LossWords;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.statistics.Stat;

/** Where plants are lost, from cells sown to planted out. */
public record LossSection(
    String sentence,
    List<Row> rows,
    List<String> causes,
    List<CropRow> crops,
    String absent,
    String svg) {
  /** A cause over all crops, or a line of the account, in text. */
  public record Row(String name, String cells, String range, String share, boolean isSum) {}

  /** A crop's shares of its cells sown, in text, cause by cause. */
  public record CropRow(String crop, String cellsSown, List<String> shares, String out) {}

  static LossSection of(Forecast forecast) {
    List<Loss> causes = Stream.of(Loss.values()).filter(l -> stat(forecast, l).mean() > 0).toList();
    List<String> absent =
        Stream.of(Loss.values())
            .filter(l -> !causes.contains(l))
            .map(TradeWords::shortLoss)
            .toList();
    return new LossSection(
        sentence(forecast),
        rows(forecast, causes),
        causes.stream().map(TradeWords::shortLoss).toList(),
        ForecastLookup.crops(forecast).stream().map(c -> crop(forecast, c, causes)).toList(),
        absent.isEmpty()
            ? ""
            : "In none of %s is anything lost to: %s."
                .formatted(Words.plural(forecast.seasons(), "spring"), String.join("; ", absent)),
        LossChart.of(bars(forecast, causes)));
  }

  private static Stat stat(Forecast forecast, Loss loss) {
    return ForecastLookup.present(forecast.losses(), loss);
  }

  private static String sentence(Forecast forecast) {
    double sown = forecast.cellsSown().mean();
    double out = forecast.onTime().mean() + forecast.late().mean();
    List<String> largest =
        LossWords.largest(forecast).stream()
            .map(
                l ->
                    TradeWords.shortLoss(l)
                        + " ("
                        + LossWords.share(stat(forecast, l).mean(), sown)
                        + ")")
            .toList();
    return "Of %s cells sown in a mean spring %s become plants in the ground, %s%s"
        .formatted(
            Words.count(sown),
            Words.count(out),
            LossWords.share(out, sown),
            largest.isEmpty() ? "." : ". Most is lost to: " + String.join(", ", largest) + ".");
  }

  private static List<Row> rows(Forecast forecast, List<Loss> causes) {
    double sown = forecast.cellsSown().mean();
    List<Row> rows = new ArrayList<>();
    rows.add(row("cells sown", forecast.cellsSown(), sown, true));
    for (Loss cause : causes) {
      rows.add(row(TradeWords.loss(cause), stat(forecast, cause), sown, false));
    }
    rows.add(row("planted out late", forecast.late(), sown, true));
    rows.add(row("planted out on time", forecast.onTime(), sown, true));
    return rows;
  }

  private static Row row(String name, Stat stat, double sown, boolean isSum) {
    return new Row(
        name,
        Words.amount(stat.mean()),
        Words.spread(stat),
        LossWords.share(stat.mean(), sown),
        isSum);
  }

  private static CropRow crop(Forecast forecast, String crop, List<Loss> causes) {
    Map<Loss, Stat> losses = ForecastLookup.present(forecast.lossesByCrop(), crop);
    double sown = ForecastLookup.cellsSown(forecast, crop);
    double out =
        ForecastLookup.sowingsOf(forecast, crop).stream()
            .mapToDouble(s -> s.onTime().mean() + s.late().mean())
            .sum();
    return new CropRow(
        crop,
        Words.count(sown),
        causes.stream()
            .map(c -> LossWords.bareShare(ForecastLookup.present(losses, c).mean(), sown))
            .toList(),
        LossWords.bareShare(out, sown));
  }

  private static List<LossChart.Bar> bars(Forecast forecast, List<Loss> causes) {
    List<LossChart.Bar> bars = new ArrayList<>();
    double sown = forecast.cellsSown().mean();
    double left = sown;
    bars.add(new LossChart.Bar("cells sown", left, 0, Words.count(left)));
    for (Loss cause : causes) {
      double lost = stat(forecast, cause).mean();
      left = Math.max(0, left - lost);
      String label = Words.amount(lost) + " (" + LossWords.share(lost, sown) + ")";
      bars.add(new LossChart.Bar(TradeWords.loss(cause), left, lost, label));
    }
    double out = forecast.onTime().mean() + forecast.late().mean();
    bars.add(
        new LossChart.Bar(
            "planted out", out, 0, Words.count(out) + " (" + LossWords.share(out, sown) + ")"));
    return bars;
  }
}

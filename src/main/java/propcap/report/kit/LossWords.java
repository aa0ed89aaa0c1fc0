package propcap.report.kit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Loss;
import propcap.study.forecast.Forecast;

/** What takes plants, in few words. */
public final class LossWords {
  private static final int NAMED = 3;

  private LossWords() {}

  /** The causes that take most, of the cells sown, in a line. */
  public static String losses(Forecast forecast) {
    double sown = forecast.cellsSown().mean();
    List<String> largest = new ArrayList<>();
    for (Loss loss : largest(forecast)) {
      double lost = ForecastLookup.present(forecast.losses(), loss).mean();
      largest.add(TradeWords.shortLoss(loss) + " " + share(lost, sown));
    }
    return largest.isEmpty()
        ? "Nothing is lost"
        : "Lost, of cells sown: " + String.join(", ", largest);
  }

  /** The causes that take most, most first. */
  public static List<Loss> largest(Forecast forecast) {
    return Stream.of(Loss.values())
        .filter(l -> ForecastLookup.present(forecast.losses(), l).mean() > 0)
        .sorted(
            Comparator.comparingDouble(
                    (Loss l) -> ForecastLookup.present(forecast.losses(), l).mean())
                .reversed())
        .limit(NAMED)
        .toList();
  }

  public static String share(double part, double whole) {
    return bareShare(part, whole) + " %";
  }

  /** The same without its sign, for a column of them. */
  public static String bareShare(double part, double whole) {
    return Words.barePercent(whole > 0 ? part / whole : 0);
  }
}

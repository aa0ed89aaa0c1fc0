package propcap.report.germination;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.GerminationIndices;

/**
 * The indices of seed laboratories: their formula and where it was published. N are new seedlings
 * at an inspection at day T, C those found by then, n all seedlings, S the seeds, k the
 * inspections.
 */
enum LaboratoryIndex {
  PERCENT(
      "percent",
      "Final germination",
      "%",
      "100 n / S",
      "7 CFR 201; common practice",
      GerminationIndices::percent),
  MEAN_TIME(
      "mean-time",
      "Mean germination time",
      "days",
      "sum N T / n",
      "Edmond and Drapala 1958",
      GerminationIndices::meanDays),
  T50_COOLBEAR(
      "t50-coolbear",
      "T50 after Coolbear",
      "days",
      "T + ((n + 1)/2 - C) (T' - T) / (C' - C)",
      "Coolbear and others 1984",
      GerminationIndices::halfByCoolbear),
  T50_FAROOQ(
      "t50-farooq",
      "T50 after Farooq",
      "days",
      "T + (n/2 - C) (T' - T) / (C' - C)",
      "Farooq and others 2005",
      GerminationIndices::halfByFarooq),
  VARIANCE(
      "variance",
      "Variance of the time",
      "days²",
      "sum N (T - mean)² / (n - 1)",
      "Labouriau 1983",
      GerminationIndices::variance),
  DEVIATION(
      "variation",
      "Coefficient of variation",
      "",
      "square root of the variance / mean time",
      "Ranal and de Santana 2006",
      GerminationIndices::deviation),
  MEAN_RATE(
      "mean-rate",
      "Mean germination rate",
      "a day",
      "1 / mean time",
      "Labouriau and Valadares 1976",
      GerminationIndices::meanRate),
  VELOCITY(
      "cvg",
      "Coefficient of velocity (CVG)",
      "",
      "100 n / sum N T",
      "Kotowski 1926",
      GerminationIndices::velocity),
  SPEED(
      "rate-index",
      "Rate index",
      "seedlings a day",
      "sum N / T",
      "Maguire 1962",
      GerminationIndices::speed),
  TIMSON(
      "timson", "Timson's index", "%", "sum 100 C / S", "Timson 1965", GerminationIndices::timson),
  LABOURIAU(
      "timson-labouriau",
      "The same over the final %",
      "",
      "Timson's index / final germination",
      "Ranal and de Santana 2006",
      GerminationIndices::labouriau),
  KHAN_UNGAR(
      "timson-khan-ungar",
      "The same over the test's days",
      "% a day",
      "Timson's index / last T",
      "Khan and Ungar 1984",
      GerminationIndices::khanUngar),
  UNIFORMITY(
      "cug",
      "Uniformity (CUG)",
      "1/days²",
      "n / sum N (T - mean)²",
      "Heydecker 1972; Bewley and Black 1994",
      GerminationIndices::uniformity),
  SYNCHRONY(
      "synchrony",
      "Synchrony Z",
      "",
      "sum N (N - 1) / (n (n - 1))",
      "Primack 1985; Ranal and de Santana 2006",
      GerminationIndices::synchrony),
  UNCERTAINTY(
      "uncertainty",
      "Uncertainty U",
      "bits",
      "-sum N/n log2 N/n",
      "Shannon 1948; Labouriau and Valadares 1976",
      GerminationIndices::uncertainty);

  private final String key;
  private final String title;
  private final String unit;
  private final String formula;
  private final String source;

  @SuppressWarnings("ImmutableEnumChecker") // A method's name: it holds nothing that changes.
  private final Function<GerminationIndices, @Nullable Double> value;

  LaboratoryIndex(
      String key,
      String title,
      String unit,
      String formula,
      String source,
      Function<GerminationIndices, @Nullable Double> value) {
    this.key = key;
    this.title = title;
    this.unit = unit;
    this.formula = formula;
    this.source = source;
    this.value = value;
  }

  String key() {
    return key;
  }

  String title() {
    return title;
  }

  String unit() {
    return unit;
  }

  String formula() {
    return formula;
  }

  String source() {
    return source;
  }

  /** Of a tray; null where too few seedlings leave it open. */
  @Nullable Double of(GerminationIndices indices) {
    return value.apply(indices);
  }
}

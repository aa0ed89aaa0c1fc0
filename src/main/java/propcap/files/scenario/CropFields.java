package propcap.files.scenario;

import static propcap.files.text.Quantity.CORRELATION;
import static propcap.files.text.Quantity.DAYS;
import static propcap.files.text.Quantity.PERCENT;
import static propcap.files.text.Quantity.PERCENT_PER_DAY;
import static propcap.files.text.Quantity.SHIFT;
import static propcap.files.text.Quantity.TEMPERATURE;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Crop.DampingOff;
import propcap.farm.Crop.Emergence;
import propcap.farm.Crop.Germination;
import propcap.farm.Crop.GrowingOn;
import propcap.farm.Crop.Hardening;
import propcap.farm.Materials;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Quantity;

/** A crop as it is written, checked for itself; places are looked up elsewhere. */
final class CropFields {
  static final List<String> KEYS =
      List.of(
          "cells",
          "seeds-per-cell",
          "germination",
          "emergence",
          "germinate-in",
          "leave-at",
          "pull-after",
          "stand-window",
          "fail-below",
          "growing-on",
          "potting-on",
          "hardening",
          "seed-weight",
          "mix",
          "pot-mix");

  private static final int MOST_CELLS = 10_000;
  private static final int MOST_SEEDS_PER_CELL = 100;
  private static final int MOST_TESTED = 1_000_000;

  private final String name;
  private final Fields fields;
  private List<Node.Text> places = List.of();

  CropFields(String name, Node.Entry written, Node.Keyed map, Faults faults) {
    this.name = name;
    this.fields = new Fields(name, written.spot(), map, KEYS, faults);
  }

  /** What was written of it, and where it is named. */
  Fields fields() {
    return fields;
  }

  /** The places that it germinates in, as written; none where they could not be read. */
  List<Node.Text> places() {
    return places;
  }

  /** Where its places are written. */
  FilePosition placesSpot() {
    return fields.spot("germinate-in");
  }

  /**
   * Reads the crop.
   *
   * @param withAlike adds the places that a scenario has beside those that the crop names
   */
  Optional<Crop> read(UnaryOperator<List<String>> withAlike) {
    int cells = fields.count("cells", 1, MOST_CELLS);
    int seeds = fields.count("seeds-per-cell", 1, MOST_SEEDS_PER_CELL, 1);
    Optional<Germination> germination =
        part("germination", List.of("rate", "tested-seeds", "tray-correlation"))
            .flatMap(this::germination);
    Optional<Emergence> emergence =
        part("emergence", List.of("base", "optimum", "ceiling", "at", "half-by", "most-by"))
            .flatMap(this::emergence);
    places = placeNames();
    double leaveAt =
        fields.has("leave-at") ? fields.positive("leave-at", PERCENT) : Crop.DEFAULT_LEAVE_AT;
    double pullAfter =
        fields.has("pull-after")
            ? fields.positive("pull-after", DAYS)
            : Crop.DEFAULT_PULL_AFTER_DAYS;
    double standWindow = fields.number("stand-window", DAYS, Crop.DEFAULT_STAND_WINDOW_DAYS);
    double failBelow = fields.number("fail-below", PERCENT, Crop.DEFAULT_FAIL_BELOW);
    Optional<GrowingOn> growingOn =
        part(
                "growing-on",
                List.of(
                    "base",
                    "optimum",
                    "at",
                    "takes",
                    "spread",
                    "loss",
                    "damping-off",
                    "holds",
                    "overheld-loss"))
            .flatMap(this::growingOn);
    Optional<Crop.PottingOn> pottingOn =
        fields.part(
            "potting-on",
            name + "'s potting-on",
            PottingFields.KEYS,
            PottingFields::read,
            Crop.PottingOn.NEVER);
    Optional<Hardening> hardening =
        part(
                "hardening",
                List.of(
                    "takes",
                    "fit-above",
                    "kill-below",
                    "frost-loss",
                    "loss",
                    "frost-risk",
                    "offset"))
            .flatMap(this::hardening);
    Optional<Materials> materials = materials();
    if (Stream.of(germination, emergence, growingOn, pottingOn, hardening, materials)
        .anyMatch(Optional::isEmpty)) {
      return Optional.empty();
    }
    return fields.made(
        () ->
            new Crop(
                name,
                cells,
                seeds,
                germination.get(),
                emergence.get(),
                withAlike.apply(places.stream().map(p -> p.text().strip()).toList()),
                leaveAt,
                pullAfter,
                standWindow,
                failBelow,
                growingOn.get(),
                pottingOn.get(),
                hardening.get(),
                materials.get()));
  }

  private Optional<Materials> materials() {
    Double seedWeight = given("seed-weight", Quantity.GRAMS_PER_1000);
    Double mix = given("mix", Quantity.LITRES_PER_TRAY);
    Double potMix = given("pot-mix", Quantity.LITRES_PER_POT);
    return fields.made(() -> new Materials(seedWeight, mix, potMix));
  }

  private @Nullable Double given(String key, Quantity quantity) {
    return fields.has(key) ? fields.positive(key, quantity) : null;
  }

  private Optional<Fields> part(String key, List<String> keys) {
    return fields.map(key, name + "'s " + key, keys);
  }

  private List<Node.Text> placeNames() {
    List<Node.Text> texts = fields.list("germinate-in", "[Chamber, Mats]");
    Set<String> seen = new HashSet<>();
    for (Node.Text text : texts) {
      if (!seen.add(text.text().strip())) {
        fields.fault(text.spot(), text.kind() + " again in germinate-in", "each place once");
      }
    }
    if (fields.isEmptyList("germinate-in")) {
      fields.fault(fields.spot("germinate-in"), "no place to germinate " + name + " in", "a place");
    }
    return texts;
  }

  private Optional<Germination> germination(Fields part) {
    double rate = part.number("rate", PERCENT);
    int tested = part.count("tested-seeds", 0, MOST_TESTED, 0);
    double correlation = part.number("tray-correlation", CORRELATION, 0);
    if (rate > 0 && rate < Germination.LEAST) {
      part.wrong("rate", "too small to reckon with", "0 %, or 0.0001 % or more");
    }
    if (correlation > 0 && correlation < Germination.LEAST) {
      part.wrong("tray-correlation", "too small to reckon with", "0, or 0.000001 or more");
    }
    return part.made(() -> new Germination(rate, tested, correlation));
  }

  private Optional<Emergence> emergence(Fields part) {
    double base = part.number("base", TEMPERATURE);
    double optimum = part.number("optimum", TEMPERATURE);
    double ceiling = part.number("ceiling", TEMPERATURE);
    double at = part.number("at", TEMPERATURE);
    double halfBy = part.positive("half-by", DAYS);
    double mostBy = part.number("most-by", DAYS);
    if (base >= optimum) {
      part.wrongPair("base", "optimum", "not below", "base below optimum");
    }
    if (optimum >= ceiling) {
      part.wrongPair("optimum", "ceiling", "not below", "optimum below ceiling");
    }
    // Where base or ceiling is wrong itself, at cannot lie between them.
    if (at <= base && !(base >= optimum)) {
      part.wrongPair("at", "base", "not above", "at between base and ceiling");
    }
    if (at >= ceiling && !(optimum >= ceiling)) {
      part.wrongPair("at", "ceiling", "not below", "at between base and ceiling");
    }
    if (mostBy <= halfBy) {
      part.wrongPair("most-by", "half-by", "not later than", "most-by later than half-by");
    }
    return part.made(() -> new Emergence(base, optimum, ceiling, at, halfBy, mostBy));
  }

  private Optional<GrowingOn> growingOn(Fields part) {
    double base = part.number("base", TEMPERATURE);
    double optimum = part.number("optimum", TEMPERATURE);
    double at = part.number("at", TEMPERATURE);
    double takes = part.positive("takes", DAYS);
    double spread = part.number("spread", PERCENT, GrowingOn.DEFAULT_SPREAD);
    double loss = part.number("loss", PERCENT, GrowingOn.DEFAULT_LOSS);
    Optional<DampingOff> dampingOff =
        part.part(
            "damping-off",
            name + "'s damping-off",
            List.of("chance", "severity"),
            CropFields::dampingOff,
            DampingOff.NONE);
    double holds = part.number("holds", DAYS);
    double overheld =
        part.number("overheld-loss", PERCENT_PER_DAY, GrowingOn.DEFAULT_OVERHELD_LOSS);
    if (base >= optimum) {
      part.wrongPair("base", "optimum", "not below", "base below optimum");
    }
    if (at <= base && !(base >= optimum)) {
      part.wrongPair("at", "base", "not above", "at above base");
    }
    return part.sound() && dampingOff.isPresent()
        ? Optional.of(
            new GrowingOn(
                base, optimum, at, takes, spread, loss, dampingOff.get(), holds, overheld))
        : Optional.empty();
  }

  private static Optional<DampingOff> dampingOff(Fields part) {
    double chance = part.number("chance", PERCENT);
    double severity = part.number("severity", PERCENT);
    return part.made(() -> new DampingOff(chance, severity));
  }

  private Optional<Hardening> hardening(Fields part) {
    double takes = part.number("takes", DAYS);
    double fitAbove = part.number("fit-above", TEMPERATURE, Hardening.DEFAULT_FIT_ABOVE_C);
    double killBelow = part.number("kill-below", TEMPERATURE, Hardening.DEFAULT_KILL_BELOW_C);
    double frostLoss = part.number("frost-loss", PERCENT, Hardening.DEFAULT_FROST_LOSS);
    double loss = part.number("loss", PERCENT, Hardening.DEFAULT_LOSS);
    double frostRisk = part.number("frost-risk", PERCENT, Hardening.DEFAULT_FROST_RISK);
    double offset = part.number("offset", SHIFT, 0);
    return part.sound()
        ? Optional.of(
            new Hardening(takes, fitAbove, killBelow, frostLoss, loss, frostRisk, (int) offset))
        : Optional.empty();
  }
}

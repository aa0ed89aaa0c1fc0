package propcap.evidence;

import java.util.Arrays;
import java.util.Set;
import propcap.farm.Crop;

/** The classes of hardiness of the crop list, each by the numbers that every crop of it shares. */
enum HardinessClass {
  VERY_HARDY("very hardy", -7, 0.04, 0.5, -42),
  FROST_TOLERANT("frost-tolerant", -5, 0.06, 0.5, -26),
  HALF_HARDY("half-hardy", -2, 0.15, 0.5, -14),
  TENDER("tender", 0, 0.3, 0.2, 0),
  WARM_LOVING("warm-loving", 0, 0.45, 0.2, 5);

  private final String words;
  private final double killBelowC;
  private final double frostLoss;
  private final double frostRisk;
  private final int offsetDays;

  HardinessClass(
      String words, double killBelowC, double frostLoss, double frostRisk, int offsetDays) {
    this.words = words;
    this.killBelowC = killBelowC;
    this.frostLoss = frostLoss;
    this.frostRisk = frostRisk;
    this.offsetDays = offsetDays;
  }

  /** In the words of the list's comments. */
  String words() {
    return words;
  }

  static HardinessClass of(Crop crop) {
    Crop.Hardening hardening = crop.hardening();
    return Arrays.stream(values())
        .filter(
            c ->
                c.killBelowC == hardening.killBelowC()
                    && c.frostLoss == hardening.frostLoss()
                    && c.frostRisk == hardening.frostRisk()
                    && c.offsetDays == hardening.offsetDays())
        .findFirst()
        .orElseThrow(() -> new AssertionError(crop.name() + " is of no class: " + hardening));
  }

  /**
   * The classes that a source's word allows. Lists of annuals know two: hardy stands frost;
   * half-hardy stands cold, and is damaged by frost (North Carolina State University Extension).
   */
  static Set<HardinessClass> meantBy(String word) {
    return switch (word) {
      case "hardy" -> Set.of(VERY_HARDY, FROST_TOLERANT);
      case "half-hardy" -> Set.of(HALF_HARDY, TENDER);
      default ->
          Set.of(
              Arrays.stream(values()).filter(c -> c.words.equals(word)).findFirst().orElseThrow());
    };
  }
}

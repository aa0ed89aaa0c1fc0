package propcap.evidence.stages;

/**
 * One guess at all figures by which trays lose plants, as the simulator has them. Losses are kept
 * as logarithms of what they leave, since they are summed over stages and days.
 *
 * @param mu mean logarithm of the degree days that growing on takes
 * @param sigma their spread over trays
 * @param lnAtOnce of the share of trays that were moved on the very round on which they were found
 *     ready, where that is not written
 * @param lnNotAtOnce of the share of the others
 * @param lnKeptGrowing of what the table leaves, outbreaks apart
 * @param lnOutbreak of the chance that a tray has an outbreak of damping-off
 * @param lnNoOutbreak of the chance that it has none
 * @param severity mean share that it takes
 * @param lnKeptPotting of what potting on leaves
 * @param lnKeptHardening of what hardening off leaves
 * @param holdsDays that a ready plug keeps
 * @param lnKeptHeld of what a day beyond them leaves, of pots as well
 * @param lnKeptWaiting of what a day on the table after growing on leaves, whatever is lost there
 * @param potHoldsDays that a ready pot keeps
 */
record StageParameters(
    double mu,
    double sigma,
    double lnAtOnce,
    double lnNotAtOnce,
    double lnKeptGrowing,
    double lnOutbreak,
    double lnNoOutbreak,
    double severity,
    double lnKeptPotting,
    double lnKeptHardening,
    double holdsDays,
    double lnKeptHeld,
    double lnKeptWaiting,
    double potHoldsDays) {

  double loss() {
    return -Math.expm1(lnKeptGrowing);
  }

  double chance() {
    return Math.exp(lnOutbreak);
  }

  double potting() {
    return -Math.expm1(lnKeptPotting);
  }

  double hardening() {
    return -Math.expm1(lnKeptHardening);
  }

  double overheld() {
    return -Math.expm1(lnKeptHeld);
  }

  StageParameters withChance(double otherChance) {
    return new StageParameters(
        mu,
        sigma,
        lnAtOnce,
        lnNotAtOnce,
        lnKeptGrowing,
        Math.log(otherChance),
        Math.log1p(-otherChance),
        severity,
        lnKeptPotting,
        lnKeptHardening,
        holdsDays,
        lnKeptHeld,
        lnKeptWaiting,
        potHoldsDays);
  }
}

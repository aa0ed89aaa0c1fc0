package propcap.evidence;

/**
 * Where the crop list is not what a source prints.
 *
 * @param what days, weeks, hardiness, lowest, best, highest, base, optimum, ceiling or share
 * @param published as the source prints it
 * @param listed what the list says, or what the model makes of it
 */
record PublishedDifference(
    String crop, String source, String what, String published, String listed) {
  /** By which a reason is found. */
  String key() {
    return crop + "," + source + "," + what;
  }
}

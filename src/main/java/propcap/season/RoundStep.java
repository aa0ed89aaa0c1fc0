package propcap.season;

/** What a tray can fall due for. */
enum RoundStep {
  PLANTING_OUT,
  MOVING_OUT,
  LEAVING_HEAT,
  /** Off the heat, with several seedlings in a cell. */
  THINNING,
  POTTING_ON,
  SOWING
}

package propcap.season;

/** What a tray can fall due for. */
enum Due {
  PLANTING_OUT,
  MOVING_OUT,
  LEAVING_HEAT,
  POTTING_ON,
  SOWING
}

package propcap.farm;

/** A step of the round that may find no room. */
public enum RoomWait implements Worded {
  /** Sowing waits for room in the heat. */
  SOW,
  /** A tray that is ready to leave the heat waits for a table. */
  LEAVE,
  /** Plugs due for potting on wait for table room. */
  POT,
  /** Ready plants wait for the hardening area. */
  HARDEN;
}

package propcap.report.kit;

import java.util.Optional;
import java.util.stream.Stream;
import propcap.farm.Loss;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.WorkKind;

/** The model's words, said in full. */
public final class TradeWords {
  private TradeWords() {}

  /** Why a cell is not a plant, such as {@code no seed came up}. */
  public static String loss(Loss loss) {
    return switch (loss) {
      case NO_SEEDLING -> "no seed of the cell came up";
      case TOO_LATE -> "came up too late for the stand";
      case FAILED_TRAY -> "whole tray failed and was thrown out";
      case STRETCHED -> "grew leggy, waiting to leave the heat";
      case GROWING_ON -> "lost on the table, damping-off included";
      case OVERHELD -> "kept too long in the cell or the pot";
      case POTTING -> "lost in the move to pots";
      case FROST -> "killed by a cold night outdoors";
      case HARDENING -> "lost while hardening off";
      case DUMPED -> "thrown out, the bed was gone";
      case UNPLANTED -> "still inside at the season's end";
    };
  }

  /** A cause of loss, short enough for the head of a column. */
  public static String shortLoss(Loss loss) {
    return switch (loss) {
      case NO_SEEDLING -> "no seedling";
      case TOO_LATE -> "too late";
      case FAILED_TRAY -> "failed trays";
      case STRETCHED -> "leggy";
      case GROWING_ON -> "on the table";
      case OVERHELD -> "kept too long";
      case POTTING -> "in potting";
      case FROST -> "frost";
      case HARDENING -> "hardening";
      case DUMPED -> "thrown out";
      case UNPLANTED -> "not planted";
    };
  }

  public static String kind(PlaceKind kind) {
    return switch (kind) {
      case HEAT_BENCH -> "heat bench";
      case CHAMBER -> "chamber";
      case TABLE -> "table";
      case HARDENING -> "hardening area";
    };
  }

  /** What waits, such as {@code to be sown}. */
  public static String step(RoomWait step) {
    return switch (step) {
      case SOW -> "to be sown";
      case LEAVE -> "to leave the heat";
      case POT -> "to be potted on";
      case HARDEN -> "to harden off";
    };
  }

  /** A work that people's hours go into, such as {@code potting on}. */
  public static String work(WorkKind work) {
    return switch (work) {
      case PLANT_OUT -> "planting out";
      case MOVE -> "moving trays";
      case THIN -> "thinning";
      case POT_ON -> "potting on";
      case SOW -> "sowing";
    };
  }

  /** The step of a word of the files, such as {@code sow}. */
  public static Optional<RoomWait> stepOf(String word) {
    return Stream.of(RoomWait.values()).filter(s -> s.word().equals(word)).findFirst();
  }

  /** The cause of loss of a word of the files, such as {@code frost}. */
  public static Optional<Loss> lossOf(String word) {
    return Stream.of(Loss.values()).filter(l -> l.word().equals(word)).findFirst();
  }

  /**
   * What is full where a step waits, in a sentence.
   *
   * @param full such as {@code still full}
   */
  public static String holdUp(RoomWait step, String full, boolean plantsStretch) {
    return switch (step) {
      case SOW -> "the heat is " + full + ", and trays wait to be sown";
      case LEAVE ->
          "the tables are %s%s to leave the heat"
              .formatted(full, plantsStretch ? ", and trays stretch waiting" : ", and trays wait");
      case POT -> "the tables are " + full + ", and plugs wait to be potted on";
      case HARDEN -> "the hardening area is " + full + ", and ready plants wait for it";
    };
  }
}

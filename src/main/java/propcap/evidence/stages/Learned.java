package propcap.evidence.stages;

import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;

/**
 * A figure of the crop list and what a log makes of it.
 *
 * @param listed as the crop list has it, with the error that its weight in trays amounts to
 * @param alone what the log would say without the list; null: it says nothing by itself
 * @param learned what both say together; as listed where no tray tells
 * @param trays of the log that tell of it
 */
public record Learned(Estimate listed, @Nullable Estimate alone, Estimate learned, int trays) {

  /** A figure that no tray of the log tells of. */
  static Learned nothing(Estimate listed) {
    return new Learned(listed, null, listed, 0);
  }

  /** All three estimates in another unit. */
  Learned times(double factor) {
    return new Learned(
        listed.times(factor),
        alone == null ? null : alone.times(factor),
        learned.times(factor),
        trays);
  }

  /** Whether the log by itself contradicts the crop list: their intervals lie apart. */
  public boolean isContradicted() {
    return alone != null && (alone.low() > listed.high() || alone.high() < listed.low());
  }
}

package propcap.files.text;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Consumer;

/** The faults found so far, and what is merely unlikely; kept sorted, each once. */
public final class Faults {
  /** A file with more than this is some other file; the rest would only fill the memory. */
  public static final int MOST_IN_A_FILE = 1000;

  private static final int MOST_WARNINGS = 100;

  private static final Comparator<Fault> BY_PLACE =
      Comparator.comparing((Fault f) -> f.file().toString())
          .thenComparingInt(Fault::line)
          .thenComparingInt(f -> f.spot().column())
          .thenComparing(Fault::found)
          .thenComparing(Fault::right);

  private final TreeSet<Fault> found = new TreeSet<>(BY_PLACE);
  private final TreeSet<Fault> warnings = new TreeSet<>(BY_PLACE);

  /** What is left empty to be found: a fault to all but those who find it. */
  private final TreeSet<Fault> toFind = new TreeSet<>(BY_PLACE);

  private final Map<Path, Integer> inFile = new HashMap<>();

  public void add(FilePosition spot, String what, String right) {
    add(spot, what, right, Fault.About.NO_VALUE);
  }

  public void add(FilePosition spot, String what, Right right) {
    add(spot, what, right.words(), Fault.About.NO_VALUE.with(right.slip()));
  }

  public void add(FilePosition spot, String what, String right, Fault.About about) {
    Path file = spot.file();
    if (isFull(file) || !found.add(spot.fault(what, right, about))) {
      return;
    }
    inFile.merge(file, 1, Integer::sum);
    if (isFull(file)) {
      found.add(
          FilePosition.whole(file)
              .fault(
                  MOST_IN_A_FILE + " faults and perhaps more",
                  "mend the first of them and read it again"));
    }
  }

  /** What is written is wrong; what could not be read is not told a second time. */
  public void wrong(Node written, String what, String right) {
    if (!(written instanceof Node.Unread)) {
      add(written.spot(), what, right);
    }
  }

  /** Something that is left empty to be found by some questions; all others stop for it. */
  void toFind(FilePosition spot, String what, String right, Fault.About about) {
    if (toFind.size() < MOST_IN_A_FILE) {
      toFind.add(spot.fault(what, right, about));
    }
  }

  /** What is left to be found is a fault as any other. */
  public void leaveNothingToFind() {
    found.addAll(toFind);
  }

  /** Something that can be meant but seldom is; nothing stops for it. */
  public void warn(FilePosition spot, String what, String meant) {
    warn(spot, what, meant, Fault.About.NO_VALUE);
  }

  void warn(FilePosition spot, String what, String meant, Fault.About about) {
    if (warnings.size() < MOST_WARNINGS) {
      warnings.add(spot.fault(what, meant, about));
    }
  }

  /** Adds all faults and warnings of others. */
  public void addAll(Faults others) {
    others.found.forEach(this::add);
    others.warnings.forEach(this::warn);
  }

  private void add(Fault fault) {
    add(fault.spot(), fault.found(), fault.right(), fault.about());
  }

  /** Something told before that stops nothing. */
  public void warn(Fault fault) {
    warn(fault.spot(), fault.found(), fault.right());
  }

  /** Whether reading on in this file would tell nothing more. */
  public boolean isFull(Path file) {
    return inFile.getOrDefault(file, 0) >= MOST_IN_A_FILE;
  }

  /** Whether there is a fault, other than what is left to be found. */
  public boolean any() {
    return !found.isEmpty();
  }

  /**
   * To be called once all is read.
   *
   * @throws FaultsException with all that was found, if there is any
   */
  public void check() throws FaultsException {
    if (any()) {
      throw new FaultsException(sorted());
    }
  }

  /**
   * To be called once all is read.
   *
   * @param doubted told of each thing that is unlikely
   * @throws FaultsException with all that was found, if there is any
   */
  public void check(Consumer<Fault> doubted) throws FaultsException {
    check();
    warnings.forEach(doubted);
  }

  public List<Fault> sorted() {
    return List.copyOf(found);
  }

  /** All of them, with what is left to be found. */
  public List<Fault> sortedWithToFind() {
    TreeSet<Fault> all = new TreeSet<>(found);
    all.addAll(toFind);
    return List.copyOf(all);
  }

  public List<Fault> warnings() {
    return List.copyOf(warnings);
  }
}

package propcap.chance;

import java.util.ArrayList;
import java.util.List;
import propcap.chance.KnownShowing.Slice;
import propcap.chance.KnownShowing.Stand;
import umontreal.ssj.probdist.BetaDist;
import umontreal.ssj.probdist.BinomialDist;

/**
 * How likely what is known of a tray's seedlings is, for any germination rate. Its n cells show
 * apart from each other, each by a share F of the way at a thermal time; those that never do have
 * their turn after the last. So of n uniforms those below F have shown, and between two counts the
 * cells that showed are spread evenly over the F between them.
 */
final class ShowingLaw {
  /** What by the rules could not have been, taken as barely possible: it then tells nothing. */
  private static final double BARELY = 1e-12;

  /** Less likely than this is never. */
  private static final double NEVER = 1e-60;

  private final EmergenceCurve curve;
  private final int cells;
  private final int toLeave;
  private final KnownShowing known;

  /** By count, the chance that a seed shows by its time; likewise for the other times. */
  private final double[] seedAt;

  private final double seedNotBy;
  private final double seedBy;
  private final double seedStand;
  private final double[] seedSlices;

  ShowingLaw(EmergenceCurve curve, int cells, int toLeave, KnownShowing known) {
    this.curve = curve;
    this.cells = cells;
    this.toLeave = toLeave;
    this.known = known;
    seedAt = known.counts().stream().mapToDouble(c -> curve.seed(c.degreeDays())).toArray();
    seedNotBy = curve.seed(known.notBy());
    seedBy = curve.seed(known.by());
    Stand stand = known.stand();
    seedStand = stand == null ? 0 : curve.seed(stand.degreeDays());
    seedSlices =
        stand == null
            ? new double[0]
            : stand.slices().stream().mapToDouble(s -> curve.seed(s.byDegreeDays())).toArray();
  }

  KnownShowing known() {
    return known;
  }

  /** The cells that showed between known counts. */
  private record Part(double from, int before, double to, int by) {
    int shown() {
      return by - before;
    }

    /** How far into this part a share lies, 0 to 1. */
    double inside(double share) {
      return to <= from ? 1 : Math.max(0, Math.min(1, (share - from) / (to - from)));
    }
  }

  /** Between counts and after the last, for a rate. */
  private List<Part> parts(double g) {
    List<Part> parts = new ArrayList<>();
    double from = 0;
    int before = 0;
    for (int i = 0; i < seedAt.length; i++) {
      double to = curve.shows(seedAt[i], g);
      int by = known.counts().get(i).seedlings();
      parts.add(new Part(from, before, to, by));
      from = to;
      before = by;
    }
    parts.add(new Part(from, before, 1, cells));
    return parts;
  }

  private static Part last(List<Part> parts) {
    return parts.get(parts.size() - 1);
  }

  /** The part in which the tray came to have enough to leave the heat. */
  private Part ofLeaving(List<Part> parts) {
    return parts.stream().filter(p -> p.by() >= toLeave).findFirst().orElseThrow();
  }

  /** How likely it is, up to a factor, where each seed germinates with chance g. */
  double likelihood(double g) {
    List<Part> parts = parts(g);
    double counts = 1;
    for (Part part : parts.subList(0, parts.size() - 1)) {
      double left = 1 - part.from();
      counts *= pmf(cells - part.before(), (part.to() - part.from()) / left, part.shown());
    }
    if (known.below() != KnownShowing.NOT_FAILED) {
      return counts * Math.max(BARELY, failed(last(parts), g));
    }
    if (counts < NEVER) {
      return 0;
    }
    Stand stand = known.stand();
    if (stand != null) {
      return counts * Math.max(BARELY, stood(parts, stand, g));
    }
    return counts * Math.max(BARELY, left(parts, g) + pulled(last(parts), g));
  }

  private double failed(Part part, double g) {
    return cdf(cells - part.before(), rel(part, seedBy, g), known.below() - 1 - part.before());
  }

  /** Chance, given the counts, that enough showed after one time and by the other. */
  private double left(List<Part> parts, double g) {
    Part part = ofLeaving(parts);
    double by = known.isOver() ? rel(part, seedBy, g) : 1;
    return enough(part, by) - enough(part, rel(part, seedNotBy, g));
  }

  private double rel(Part part, double seed, double g) {
    return part.inside(curve.shows(seed, g));
  }

  /** Chance that enough had shown by a point of a part. */
  private double enough(Part part, double at) {
    if (at <= 0 || at >= 1) {
      return at <= 0 ? 0 : 1;
    }
    return BetaDist.cdf(toLeave - part.before(), part.by() - toLeave + 1, at);
  }

  /** Chance, given the counts, that it was pulled with fewer, but not too few. */
  private double pulled(Part part, double g) {
    if (!known.isOver() || known.atLeast() >= toLeave || part.before() >= toLeave) {
      return 0;
    }
    double by = rel(part, seedBy, g);
    int n = cells - part.before();
    return cdf(n, by, toLeave - 1 - part.before())
        - cdf(n, by, known.atLeast() - 1 - part.before());
  }

  /** Chance, given the counts, that it left as it did and that so many stood in the end. */
  private double stood(List<Part> parts, Stand stand, double g) {
    double sum = 0;
    double before = seedNotBy;
    for (int i = 0; i < seedSlices.length; i++) {
      Slice slice = stand.slices().get(i);
      sum += stoodIn(ofLeaving(parts), last(parts), before, seedSlices[i], slice.kept(), g);
      before = seedSlices[i];
    }
    return sum + stoodPulled(last(parts), stand, g);
  }

  /** Enough showed within a slice of time, and of what shows in the end so many are left. */
  private double stoodIn(Part part, Part last, double from, double to, double kept, double g) {
    int plants = standPlants();
    double standing = curve.shows(seedStand, g);
    if (last.before() < toLeave && kept == 1) {
      return keptAll(last, from, to, standing, plants, g);
    }
    double a = rel(part, from, g);
    double b = rel(part, to, g);
    double chance = enough(part, b) - enough(part, a);
    if (chance <= 0) {
      return 0;
    }
    if (last.before() >= toLeave) {
      int later = cells - last.before();
      return chance * kept(last.before(), later, last.inside(standing), kept, plants);
    }
    double middle = last.from() + (last.to() - last.from()) * (a + b) / 2;
    double later = Math.max(0, (standing - middle) / (1 - middle));
    return chance * kept(toLeave, cells - toLeave, later, kept, plants);
  }

  /** So many showed in the end: how likely is it that of these the J-th came in the slice? */
  private double keptAll(Part last, double from, double to, double standing, int plants, double g) {
    double shown = pmf(cells - last.before(), last.inside(standing), plants - last.before());
    if (plants < toLeave || shown < NEVER) {
      return 0;
    }
    Part in = new Part(last.from(), last.before(), standing, plants);
    return shown * (enough(in, rel(in, to, g)) - enough(in, rel(in, from, g)));
  }

  private double stoodPulled(Part last, Stand stand, double g) {
    if (known.atLeast() >= toLeave || last.before() >= toLeave) {
      return 0;
    }
    double by = curve.shows(seedBy, g);
    double later = Math.max(0, (curve.shows(seedStand, g) - by) / (1 - by));
    double sum = 0;
    for (int m = Math.max(known.atLeast(), last.before()); m < toLeave; m++) {
      sum +=
          pmf(cells - last.before(), last.inside(by), m - last.before())
              * kept(m, cells - m, later, stand.keptIfPulled(), stand.plants());
    }
    return sum;
  }

  private int standPlants() {
    Stand stand = known.stand();
    return stand == null ? 0 : stand.plants();
  }

  /** Chance of so many plants: of those that showed and those that do later, a share is kept. */
  private static double kept(int showed, int others, double later, double kept, int plants) {
    if (kept == 1) {
      return pmf(others, later, plants - showed);
    }
    double sum = 0;
    for (int i = Math.max(0, plants - others); i <= Math.min(showed, plants); i++) {
      sum += pmf(showed, kept, i) * pmf(others, later * kept, plants - i);
    }
    return sum;
  }

  private static double pmf(int n, double p, int k) {
    return k < 0 || k > n ? 0 : BinomialDist.prob(n, Math.max(0, Math.min(1, p)), k);
  }

  private static double cdf(int n, double p, int k) {
    if (k < 0 || k >= n) {
      return k < 0 ? 0 : 1;
    }
    return BinomialDist.cdf(n, Math.max(0, Math.min(1, p)), k);
  }

  // Drawing.

  /**
   * Draws when the seedlings show, given what is known and the tray's rate.
   *
   * @param ready uniform of when as many show as it takes to leave the heat
   * @param earlier of how many show before that
   * @param later of how many show after that, or after the last count
   */
  KnownSeedlings draw(double g, double ready, double earlier, double later) {
    List<Part> parts = parts(g);
    Stand stand = known.stand();
    if (stand != null) {
      return stands(stand, g, later);
    }
    Part last = last(parts);
    if (known.below() != KnownShowing.NOT_FAILED) {
      double by = rel(last, seedBy, g);
      int n = cells - last.before();
      double chance = cdf(n, by, known.below() - 1 - last.before());
      int shown = last.before() + Binomial.quantile(n, by, ready * chance);
      return seedlings(g, Double.POSITIVE_INFINITY, shareBy(g), shown, later);
    }
    Part part = ofLeaving(parts);
    double a = enough(part, rel(part, seedNotBy, g));
    double b = known.isOver() ? enough(part, rel(part, seedBy, g)) : 1;
    double left = Math.max(0, b - a);
    double pulled = pulled(last, g);
    double u = ready * (left + pulled);
    if (pulled > 0 && u >= left) {
      int n = cells - last.before();
      double by = rel(last, seedBy, g);
      double fewer = cdf(n, by, known.atLeast() - 1 - last.before());
      int shown = last.before() + Binomial.quantile(n, by, fewer + u - left);
      return seedlings(g, Double.POSITIVE_INFINITY, shareBy(g), shown, later);
    }
    double inside = left <= 0 ? nearest(part, g) : quantile(part, a + u);
    double share = part.from() + (part.to() - part.from()) * inside;
    if (last.before() >= toLeave) {
      double at = curve.timeShown(share, g);
      return seedlings(g, at, last.from(), last.before(), later);
    }
    return KnownSeedlings.after(
        curve,
        g,
        cells,
        new Turn(last.from(), last.before()),
        new Turn(share, toLeave),
        earlier,
        later);
  }

  /** A share of all cells at which so many had shown. */
  record Turn(double share, int shown) {}

  private double shareBy(double g) {
    return curve.shows(seedBy, g);
  }

  private KnownSeedlings seedlings(
      double g, double readyAt, double share, int shown, double later) {
    return KnownSeedlings.at(curve, g, cells, readyAt, new Turn(share, shown), later);
  }

  /** What stood in the end is known: when it was due matters no more, but for how leggy it was. */
  private KnownSeedlings stands(Stand stand, double g, double later) {
    return seedlings(
        g, known.by(), curve.shows(seedStand, g), Math.min(cells, stand.plants()), later);
  }

  /** A log that cannot be had by the rules: as near to it as can be. */
  private double nearest(Part part, double g) {
    return known.isOver() ? rel(part, seedBy, g) : rel(part, seedNotBy, g);
  }

  private double quantile(Part part, double u) {
    return BetaDist.inverseF(
        toLeave - part.before(), part.by() - toLeave + 1, Math.max(0, Math.min(1, u)));
  }
}

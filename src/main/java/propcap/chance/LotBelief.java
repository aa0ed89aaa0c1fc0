package propcap.chance;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;

/**
 * What is believed of a lot and of its trays once some of them have been sown: the lot's rate given
 * all that is known of them, a tray's rate given the lot's and what is known of that tray.
 */
final class LotBelief {
  private final CropLuck crop;

  /** Null where trays do not differ: each has its lot's rate. */
  private final @Nullable TrayRates rates;

  private final Map<KnownShowing, Evidence> evidence = new HashMap<>();

  /** Null where the lot's rate is taken as certain. */
  private final @Nullable RateBelief belief;

  /** What is known of some trays alike. */
  private static final class Evidence {
    final ShowingLaw law;
    final double[] byRate;
    int trays;

    Evidence(ShowingLaw law, double[] byRate) {
      this.law = law;
      this.byRate = byRate;
    }
  }

  /** What is believed of a lot of a crop, and what is known of its trays. */
  private record Key(CropLuck crop, List<KnownShowing> trays) {}

  private static final Made<Key, LotBelief> MADE = new Made<>(2000);

  /** What is believed of a lot when so much is known of its trays, in any order. */
  static LotBelief of(CropLuck crop, Collection<KnownShowing> trays) {
    return MADE.of(new Key(crop, List.copyOf(trays)), LotBelief::new);
  }

  private LotBelief(Key key) {
    this.crop = key.crop();
    List<KnownShowing> trays = key.trays();
    Crop.Germination germination = crop.germination();
    boolean differ = germination.trayCorrelation() > TrayRates.LEAST;
    rates = differ ? new TrayRates(germination.trayCorrelation()) : null;
    for (KnownShowing tray : trays) {
      evidence.computeIfAbsent(tray, this::evidence).trays++;
    }
    double rate = germination.rate();
    double tested = germination.testedSeeds();
    boolean isCertain = tested == 0 || rate == 0 || rate == 1;
    belief = isCertain ? null : new RateBelief(rate * tested, (1 - rate) * tested, logLikelihood());
  }

  private Evidence evidence(KnownShowing known) {
    ShowingLaw law = new ShowingLaw(crop.curve(), crop.cells(), crop.cellsToLeave(), known);
    return new Evidence(law, rates == null ? new double[0] : rates.of(law::likelihood));
  }

  private DoubleUnaryOperator logLikelihood() {
    List<Evidence> all = new ArrayList<>(evidence.values());
    return lotRate -> {
      double sum = 0;
      TrayRates.Around around = rates == null ? null : rates.around(lotRate);
      for (Evidence each : all) {
        double one = around == null ? each.law.likelihood(lotRate) : around.mean(each.byRate);
        sum += each.trays * Math.log(Math.max(Double.MIN_NORMAL, one));
      }
      return sum;
    };
  }

  /** The lot's rate in a season, from its uniform. */
  double lotRate(double u) {
    return belief == null ? crop.lotRate(u) : belief.at(u);
  }

  /** Its trays in a season in which the lot has such a rate; for one thread. */
  Season season(double lotRate) {
    return new Season(lotRate);
  }

  /** One season's trays. */
  final class Season {
    private final double lotRate;
    private final CropLuck.Lot lot;
    private final Map<KnownShowing, double[]> cumulated = new HashMap<>();

    /** Made when a tray is first drawn. */
    private TrayRates.@Nullable Around around;

    private Season(double lotRate) {
      this.lotRate = lotRate;
      lot = crop.lot(lotRate);
    }

    /** The luck of a tray; null of what is known: it is still to be sown. */
    TrayLuck tray(@Nullable KnownTray known, double[] uniforms) {
      if (known == null) {
        return lot.tray(uniforms);
      }
      KnownShowing showing = known.showing();
      Evidence each = evidence.get(showing);
      if (each == null) {
        throw new IllegalStateException("nothing was learned from a tray that is known");
      }
      double u = uniforms[DrawPurpose.RATE.ordinal()];
      return new KnownTrayLuck(crop, known, each.law, rate(showing, each, u), uniforms);
    }

    private double rate(KnownShowing showing, Evidence each, double u) {
      if (rates == null || lotRate <= 0 || lotRate >= 1) {
        return lot.trayRate(u);
      }
      TrayRates.Around trays = around == null ? rates.around(lotRate) : around;
      around = trays;
      return trays.at(cumulated.computeIfAbsent(showing, k -> trays.cumulated(each.byRate)), u);
    }
  }
}

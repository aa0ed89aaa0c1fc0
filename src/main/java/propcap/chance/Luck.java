package propcap.chance;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Climate;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/**
 * The luck of every season of a scenario under one seed. A tray's luck is fixed by the season's
 * number, the sowing's id, the tray's number, the attempt and the purpose: it does not change when
 * a place grows, another sowing moves or joins, or a thread runs first.
 */
public final class Luck {
  private final List<Sowing> sowings;
  private final int weatherYears;
  private final long seed;

  /** By sowing. */
  private final CropLuck[] crops;

  /** The lots that are sown, and by sowing which of them it is of. */
  private final List<String> lots;

  private final int[] lotOf;

  /** Null before a season has begun. */
  private final @Nullable KnownLuck known;

  /** By year that is told apart and lot; made when first needed, any thread may. */
  private final AtomicReferenceArray<Optional<LotBelief>> beliefs;

  /** The luck of seasons that have not begun. */
  public Luck(Scenario scenario, long seed) {
    this(scenario, seed, null);
  }

  /**
   * The luck of a scenario's seasons.
   *
   * @param known of the season that has begun; null: none has
   */
  public Luck(Scenario scenario, long seed, @Nullable KnownLuck known) {
    this.seed = seed;
    this.known = known;
    sowings = scenario.sowings();
    weatherYears = scenario.weather().size();
    Map<String, CropLuck> byCrop = new HashMap<>();
    crops =
        sowings.stream()
            .map(s -> byCrop.computeIfAbsent(s.crop(), c -> CropLuck.of(scenario.cropOf(s))))
            .toArray(CropLuck[]::new);
    lots = sowings.stream().map(Luck::lotKey).distinct().toList();
    lotOf = sowings.stream().mapToInt(s -> lots.indexOf(lotKey(s))).toArray();
    beliefs = new AtomicReferenceArray<>(known == null ? 0 : known.years() * lots.size());
  }

  /** Streams of its own for a thread, which should ask for seasons in rising order. */
  public Reader reader() {
    return new Reader(false);
  }

  /**
   * The same, which keeps what it draws while memory lasts: for a season that has begun, of which
   * many scenarios are tried on the same springs. To draw a tray given what is known of it takes as
   * long as to raise it.
   */
  public Reader keepingReader() {
    return new Reader(true);
  }

  /** What the trays of a sowing hang on in one season. */
  private record Drawing(
      long seed,
      int season,
      String sowing,
      int place,
      int trays,
      String lot,
      CropLuck crop,
      @Nullable LotBelief belief,
      KnownLuck known) {}

  private static final Made<Drawing, TrayLuck[]> DRAWN = new Made<>(30_000);

  /** Whether two scenarios have the same luck under the same seed, tray by tray. */
  public static boolean isShared(Scenario one, Scenario other) {
    return Objects.equals(one.soFar(), other.soFar())
        && (one.soFar() == null || climates(one).equals(climates(other)))
        && one.weather().size() == other.weather().size()
        && one.sowings().size() == other.sowings().size()
        && IntStream.range(0, one.sowings().size())
            .allMatch(s -> isShared(one, one.sowings().get(s), other, other.sowings().get(s)));
  }

  /** How warm it was where trays have stood. */
  private static Map<String, Climate> climates(Scenario scenario) {
    return scenario.places().stream().collect(Collectors.toMap(Place::name, Place::climate));
  }

  private static boolean isShared(Scenario one, Sowing sowing, Scenario other, Sowing otherSowing) {
    boolean isAsBefore =
        one.soFar() == null || one.cropOf(sowing).equals(other.cropOf(otherSowing));
    return isAsBefore
        && sowing.id().equals(otherSowing.id())
        && sowing.trays() == otherSowing.trays()
        && lotKey(sowing).equals(lotKey(otherSowing))
        && CropLaw.of(one.cropOf(sowing)).equals(CropLaw.of(other.cropOf(otherSowing)));
  }

  /** Draws seasons, one after the other, for one thread. */
  public final class Reader {
    private final WeatherYears years = new WeatherYears(seed, weatherYears);
    private final RandomStream[] ofLots =
        lots.stream().map(lot -> new RandomStream(seed, "lot", lot)).toArray(RandomStream[]::new);
    private final RandomStream[] trays =
        IntStream.range(0, sowings.size())
            .mapToObj(s -> trayStream(s, 0))
            .toArray(RandomStream[]::new);

    /** Streams of trays sown again, made when first needed. */
    private final Map<String, RandomStream> again = new HashMap<>();

    private final boolean keeps;

    private Reader(boolean keeps) {
      this.keeps = keeps;
    }

    /** The luck of a season, by its number from 0. */
    public SeasonLuck season(int number) {
      int year = years.of(number);
      double[] lotUniforms = new double[ofLots.length];
      for (int lot = 0; lot < lotUniforms.length; lot++) {
        ofLots[lot].toSeason(number);
        lotUniforms[lot] = ofLots[lot].next();
      }
      Drawn drawn = new Drawn(year, lotUniforms);
      TrayDrawing[] drawings = new TrayDrawing[trays.length];
      TrayLuck[][] luck = new TrayLuck[trays.length][];
      for (int s = 0; s < trays.length; s++) {
        drawings[s] = drawn.of(s);
        luck[s] = trays(number, year, s, drawings[s]);
      }
      return new SeasonLuck(
          year, luck, (s, tray, attempt) -> again(number, s, tray, attempt, drawings[s]));
    }

    private TrayLuck[] trays(int number, int year, int s, TrayDrawing drawing) {
      KnownLuck past = known;
      if (!keeps || past == null) {
        return drawn(number, s, drawing);
      }
      Sowing sowing = sowings.get(s);
      LotBelief belief = belief(past, year, lotOf[s], crops[s]);
      return DRAWN.of(
          new Drawing(
              seed,
              number,
              sowing.id(),
              s,
              sowing.trays(),
              lots.get(lotOf[s]),
              crops[s],
              belief,
              past),
          key -> drawn(number, s, drawing));
    }

    private TrayLuck[] drawn(int number, int sowing, TrayDrawing drawing) {
      TrayLuck[] luck = new TrayLuck[sowings.get(sowing).trays()];
      trays[sowing].toSeason(number);
      for (int i = 0; i < luck.length; i++) {
        luck[i] = drawing.tray(i, 0, trays[sowing].nextBlock());
      }
      return luck;
    }

    private TrayLuck again(int number, int sowing, int tray, int attempt, TrayDrawing drawing) {
      RandomStream stream =
          again.computeIfAbsent(sowing + "\0" + attempt, k -> trayStream(sowing, attempt));
      stream.toSeason(number);
      double[] block = stream.nextBlock();
      for (int i = 0; i < tray; i++) {
        block = stream.nextBlock();
      }
      return drawing.tray(tray, attempt, block);
    }

    private RandomStream trayStream(int sowing, int attempt) {
      return new RandomStream(seed, "tray", sowings.get(sowing).id(), String.valueOf(attempt));
    }
  }

  /** How the luck of one sowing's trays is drawn in one season. */
  @FunctionalInterface
  private interface TrayDrawing {
    TrayLuck tray(int number, int attempt, double[] uniforms);
  }

  /** One season's luck as it is drawn: its year and its lots. */
  private final class Drawn {
    private final int weatherYear;
    private final double[] lotUniforms;
    private final LotBelief.@Nullable Season[] lotsKnown;

    Drawn(int weatherYear, double[] lotUniforms) {
      this.weatherYear = weatherYear;
      this.lotUniforms = lotUniforms;
      lotsKnown = new LotBelief.Season[lotUniforms.length];
    }

    TrayDrawing of(int sowing) {
      CropLuck crop = crops[sowing];
      int lot = lotOf[sowing];
      KnownLuck past = known;
      LotBelief belief = past == null ? null : belief(past, weatherYear, lot, crop);
      if (past == null || belief == null) {
        CropLuck.Lot sown = crop.lot(crop.lotRate(lotUniforms[lot]));
        return (number, attempt, uniforms) -> sown.tray(uniforms);
      }
      LotBelief.Season drawn = lotsKnown[lot];
      LotBelief.Season season =
          drawn == null ? belief.season(belief.lotRate(lotUniforms[lot])) : drawn;
      lotsKnown[lot] = season;
      int year = past.yearOf(weatherYear);
      return (number, attempt, uniforms) ->
          season.tray(past.of(year, new KnownLuck.Tray(sowing, number, attempt)), uniforms);
    }
  }

  /** What is believed of a lot; null where none of its trays has been sown. */
  private @Nullable LotBelief belief(KnownLuck past, int weatherYear, int lot, CropLuck crop) {
    int year = past.yearOf(weatherYear);
    int at = year * lots.size() + lot;
    Optional<LotBelief> belief = beliefs.getPlain(at);
    if (belief == null) {
      List<KnownShowing> trays = past.showing(year, sowing -> lotOf[sowing] == lot);
      belief = trays.isEmpty() ? Optional.empty() : Optional.of(LotBelief.of(crop, trays));
      // Two threads may make the same; either will do.
      beliefs.setRelease(at, belief);
    }
    return belief.orElse(null);
  }

  /** A lot is of one crop: two crops that call a lot by the same name do not share it. */
  private static String lotKey(Sowing sowing) {
    return sowing.crop() + "\0" + sowing.lot();
  }
}

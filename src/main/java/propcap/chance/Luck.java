package propcap.chance;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/**
 * The luck of every season of a scenario under one seed. A tray's luck is fixed by the season's
 * number, the sowing's id, the tray's number, the attempt and the purpose: it does not change when
 * a place grows, another sowing moves or joins, or a thread runs first.
 */
public final class Luck {
  private final Scenario scenario;
  private final long seed;
  private final Map<String, CropLuck> crops = new HashMap<>();

  public Luck(Scenario scenario, long seed) {
    this.scenario = scenario;
    this.seed = seed;
    for (Sowing sowing : scenario.sowings()) {
      crops.computeIfAbsent(sowing.crop(), c -> new CropLuck(scenario.cropOf(sowing)));
    }
  }

  /** Streams of its own for a thread, which should ask for seasons in rising order. */
  public Reader reader() {
    return new Reader();
  }

  /** Whether two scenarios have the same luck under the same seed, tray by tray. */
  public static boolean isShared(Scenario one, Scenario other) {
    return one.weather().size() == other.weather().size()
        && one.sowings().size() == other.sowings().size()
        && IntStream.range(0, one.sowings().size())
            .allMatch(s -> isShared(one, one.sowings().get(s), other, other.sowings().get(s)));
  }

  private static boolean isShared(Scenario one, Sowing sowing, Scenario other, Sowing otherSowing) {
    return sowing.id().equals(otherSowing.id())
        && sowing.trays() == otherSowing.trays()
        && lotKey(sowing).equals(lotKey(otherSowing))
        && CropLaw.of(one.cropOf(sowing)).equals(CropLaw.of(other.cropOf(otherSowing)));
  }

  private CropLuck cropOf(Sowing sowing) {
    CropLuck crop = crops.get(sowing.crop());
    if (crop == null) {
      throw new IllegalArgumentException("no such crop: " + sowing.crop());
    }
    return crop;
  }

  /** Draws seasons, one after the other, for one thread. */
  public final class Reader {
    private final List<Sowing> sowings = scenario.sowings();
    private final WeatherYears years = new WeatherYears(seed, scenario.weather().size());
    private final Map<String, Stream> lots = new HashMap<>();
    private final Stream[] trays = new Stream[sowings.size()];

    /** Streams of trays sown again, made when first needed. */
    private final Map<String, Stream> again = new HashMap<>();

    private Reader() {
      for (int s = 0; s < trays.length; s++) {
        lots.computeIfAbsent(lotKey(sowings.get(s)), k -> new Stream(seed, "lot", k));
        trays[s] = trayStream(s, 0);
      }
    }

    /** The luck of a season, by its number from 0. */
    public SeasonLuck season(int number) {
      int year = years.of(number);
      Map<String, Double> lotUniforms = new HashMap<>();
      lots.forEach(
          (lot, stream) -> {
            stream.toSeason(number);
            lotUniforms.put(lot, stream.next());
          });
      double[] lotRates = new double[trays.length];
      TrayLuck[][] luck = new TrayLuck[trays.length][];
      for (int s = 0; s < trays.length; s++) {
        Sowing sowing = sowings.get(s);
        CropLuck crop = cropOf(sowing);
        lotRates[s] = crop.lotRate(lotUniforms.getOrDefault(lotKey(sowing), 0.5));
        luck[s] = new TrayLuck[sowing.trays()];
        trays[s].toSeason(number);
        for (int i = 0; i < luck[s].length; i++) {
          luck[s][i] = crop.tray(lotRates[s], trays[s].nextBlock());
        }
      }
      return new SeasonLuck(
          year, luck, (s, tray, attempt) -> again(number, s, tray, attempt, lotRates[s]));
    }

    private TrayLuck again(int number, int sowing, int tray, int attempt, double lotRate) {
      Stream stream =
          again.computeIfAbsent(sowing + "\0" + attempt, k -> trayStream(sowing, attempt));
      stream.toSeason(number);
      double[] block = stream.nextBlock();
      for (int i = 0; i < tray; i++) {
        block = stream.nextBlock();
      }
      return cropOf(sowings.get(sowing)).tray(lotRate, block);
    }

    private Stream trayStream(int sowing, int attempt) {
      return new Stream(seed, "tray", sowings.get(sowing).id(), String.valueOf(attempt));
    }
  }

  /** A lot is of one crop: two crops that call a lot by the same name do not share it. */
  private static String lotKey(Sowing sowing) {
    return sowing.crop() + "\0" + sowing.lot();
  }
}

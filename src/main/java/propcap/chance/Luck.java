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
  private final List<Sowing> sowings;
  private final int weatherYears;
  private final long seed;

  /** By sowing. */
  private final CropLuck[] crops;

  /** The lots that are sown, and by sowing which of them it is of. */
  private final List<String> lots;

  private final int[] lotOf;

  public Luck(Scenario scenario, long seed) {
    this.seed = seed;
    sowings = scenario.sowings();
    weatherYears = scenario.weather().size();
    Map<String, CropLuck> byCrop = new HashMap<>();
    crops =
        sowings.stream()
            .map(s -> byCrop.computeIfAbsent(s.crop(), c -> new CropLuck(scenario.cropOf(s))))
            .toArray(CropLuck[]::new);
    lots = sowings.stream().map(Luck::lotKey).distinct().toList();
    lotOf = sowings.stream().mapToInt(s -> lots.indexOf(lotKey(s))).toArray();
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

    /** The luck of a season, by its number from 0. */
    public SeasonLuck season(int number) {
      double[] lotUniforms = new double[ofLots.length];
      for (int lot = 0; lot < lotUniforms.length; lot++) {
        ofLots[lot].toSeason(number);
        lotUniforms[lot] = ofLots[lot].next();
      }
      double[] lotRates = new double[trays.length];
      TrayLuck[][] luck = new TrayLuck[trays.length][];
      for (int s = 0; s < trays.length; s++) {
        lotRates[s] = crops[s].lotRate(lotUniforms[lotOf[s]]);
        luck[s] = new TrayLuck[sowings.get(s).trays()];
        trays[s].toSeason(number);
        for (int i = 0; i < luck[s].length; i++) {
          luck[s][i] = crops[s].tray(lotRates[s], trays[s].nextBlock());
        }
      }
      return new SeasonLuck(
          years.of(number),
          luck,
          (s, tray, attempt) -> again(number, s, tray, attempt, lotRates[s]));
    }

    private TrayLuck again(int number, int sowing, int tray, int attempt, double lotRate) {
      RandomStream stream =
          again.computeIfAbsent(sowing + "\0" + attempt, k -> trayStream(sowing, attempt));
      stream.toSeason(number);
      double[] block = stream.nextBlock();
      for (int i = 0; i < tray; i++) {
        block = stream.nextBlock();
      }
      return crops[sowing].tray(lotRate, block);
    }

    private RandomStream trayStream(int sowing, int attempt) {
      return new RandomStream(seed, "tray", sowings.get(sowing).id(), String.valueOf(attempt));
    }
  }

  /** A lot is of one crop: two crops that call a lot by the same name do not share it. */
  private static String lotKey(Sowing sowing) {
    return sowing.crop() + "\0" + sowing.lot();
  }
}

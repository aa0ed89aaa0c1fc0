package propcap.chance;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/** Luck written by hand: every uniform is a half unless told otherwise. */
public final class HandLuck {
  private final Scenario scenario;
  private final Map<String, Double> set = new HashMap<>();
  private int weatherYear;

  public HandLuck(Scenario scenario) {
    this.scenario = scenario;
  }

  public HandLuck weatherYear(int number) {
    weatherYear = number;
    return this;
  }

  /** Sets one uniform of a tray; attempt 0 is its first sowing. */
  public HandLuck with(int sowing, int tray, int attempt, DrawPurpose draw, double uniform) {
    set.put(key(sowing, tray, attempt, draw), uniform);
    return this;
  }

  private static String key(int sowing, int tray, int attempt, DrawPurpose draw) {
    return sowing + "/" + tray + "/" + attempt + "/" + draw;
  }

  public SeasonLuck make() {
    TrayLuck[][] trays = new TrayLuck[scenario.sowings().size()][];
    for (int s = 0; s < trays.length; s++) {
      trays[s] = new TrayLuck[scenario.sowings().get(s).trays()];
      for (int i = 0; i < trays[s].length; i++) {
        trays[s][i] = tray(s, i, 0);
      }
    }
    return new SeasonLuck(weatherYear, trays, this::tray);
  }

  private TrayLuck tray(int sowing, int tray, int attempt) {
    Sowing line = scenario.sowings().get(sowing);
    Crop crop = scenario.cropOf(line);
    double[] uniforms = new double[DrawPurpose.COUNT];
    Arrays.fill(uniforms, 0.5);
    for (DrawPurpose draw : DrawPurpose.values()) {
      Double given = set.get(key(sowing, tray, attempt, draw));
      if (given != null) {
        uniforms[draw.ordinal()] = given;
      }
    }
    return CropLuck.of(crop).lot(crop.germination().rate()).tray(uniforms);
  }
}

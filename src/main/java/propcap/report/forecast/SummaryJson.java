package propcap.report.forecast;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Loss;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.WorkKind;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.HandsForecast;
import propcap.study.statistics.Stat;

/**
 * The forecast for other programs, every number in full precision. It holds nothing of how the work
 * was shared out, so that the same scenario and seed give the same bytes.
 */
final class SummaryJson {
  private SummaryJson() {}

  private record Plants(int trays, Map<String, @Nullable LocalDate> release, Total total) {}

  private record Total(Stat onTime, Stat late, Stat cellsSown) {}

  private record Spring(
      List<?> sowings,
      Map<Loss, Stat> losses,
      List<Place> places,
      Map<RoomWait, Stat> waiting,
      Hands hands) {}

  private record Place(
      String name, PlaceKind kind, int spaces, double meanUse, Stat peak, Stat fullDays) {}

  private record Hands(
      @Nullable Double hoursPerDay,
      Stat hours,
      int workingDays,
      double meanOfWorkingDay,
      Stat daysShort,
      double shareShort,
      Map<WorkKind, Double> byWork,
      Map<WorkKind, Stat> waiting) {}

  /** Refuses a number that is not finite, with an {@link IllegalArgumentException}. */
  static String of(Forecast forecast, String version) {
    Map<String, @Nullable LocalDate> release = new LinkedHashMap<>();
    ForecastLookup.crops(forecast).forEach(crop -> release.put(crop, forecast.release().get(crop)));
    return Json.text(
        Head.of(forecast.scenario(), version, forecast.seasons(), forecast.settings()),
        new Plants(
            forecast.scenario().trays(),
            release,
            new Total(forecast.onTime(), forecast.late(), forecast.cellsSown())),
        new Spring(
            Tables.SOWINGS.objects(forecast.sowings()),
            ForecastLookup.inOrder(Loss.values(), forecast.losses()),
            forecast.places().stream().map(SummaryJson::place).toList(),
            ForecastLookup.inOrder(RoomWait.values(), forecast.waiting()),
            hands(forecast.hands(), forecast.scenario().labour().hoursPerDay())));
  }

  private static Hands hands(HandsForecast hands, double hoursPerDay) {
    return new Hands(
        Double.isFinite(hoursPerDay) ? Double.valueOf(hoursPerDay) : null,
        hands.hours(),
        hands.workingDays(),
        hands.hoursPerWorkingDay(),
        hands.daysShort(),
        hands.shareShort(),
        ForecastLookup.inOrder(WorkKind.values(), hands.hoursByWork()),
        ForecastLookup.inOrder(WorkKind.values(), hands.waiting()));
  }

  private static Place place(Occupancy p) {
    return new Place(p.name(), p.kind(), p.spaces(), p.meanUse(), p.peak(), p.fullDays());
  }
}

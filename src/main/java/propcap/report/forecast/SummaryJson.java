package propcap.report.forecast;

import propcap.farm.Loss;
import propcap.farm.Step;
import propcap.farm.Work;
import propcap.report.kit.Plan;
import propcap.report.kit.PutJson;
import propcap.study.Forecast;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SowingForecast;
import propcap.study.HandsForecast;

/**
 * The forecast for other programs, every number in full precision. It holds nothing of how the work
 * was shared out, so that the same scenario and seed give the same bytes.
 */
final class SummaryJson {
  private SummaryJson() {}

  /** Refuses a number that is not finite, with an {@link IllegalArgumentException}. */
  static String of(Forecast forecast, String version) {
    PutJson release = new PutJson();
    for (String crop : Plan.crops(forecast)) {
      release.put(crop, forecast.release().get(crop));
    }
    PutJson total =
        new PutJson()
            .put("onTime", forecast.onTime())
            .put("late", forecast.late())
            .put("cellsSown", forecast.cellsSown());
    PutJson losses = new PutJson();
    for (Loss loss : Loss.values()) {
      losses.put(loss.word(), Plan.present(forecast.losses(), loss));
    }
    PutJson waiting = new PutJson();
    for (Step step : Step.values()) {
      waiting.put(step.word(), Plan.present(forecast.waiting(), step));
    }
    return new PutJson()
        .put("scenario", forecast.scenario().name())
        .put("version", version)
        .put("seasons", forecast.seasons())
        .put("seed", forecast.settings().seed())
        .put("trays", forecast.scenario().trays())
        .put("release", release)
        .put("total", total)
        .put("sowings", PutJson.each(forecast.sowings(), SummaryJson::sowing))
        .put("losses", losses)
        .put("places", PutJson.each(forecast.places(), SummaryJson::place))
        .put("waiting", waiting)
        .put("hands", hands(forecast))
        .text();
  }

  private static PutJson hands(Forecast forecast) {
    HandsForecast hands = forecast.hands();
    double hoursPerDay = forecast.scenario().labour().hoursPerDay();
    PutJson hours = new PutJson();
    PutJson waiting = new PutJson();
    for (Work work : Work.values()) {
      hours.put(work.word(), Plan.present(hands.hoursByWork(), work).doubleValue());
      waiting.put(work.word(), Plan.present(hands.waiting(), work));
    }
    return new PutJson()
        .put("hoursPerDay", Double.isFinite(hoursPerDay) ? Double.valueOf(hoursPerDay) : null)
        .put("hours", hands.hours())
        .put("workingDays", hands.workingDays())
        .put("meanOfWorkingDay", hands.hoursPerWorkingDay())
        .put("daysShort", hands.daysShort())
        .put("shareShort", hands.shareShort())
        .put("byWork", hours)
        .put("waiting", waiting);
  }

  private static PutJson sowing(SowingForecast forecast) {
    return new PutJson()
        .put("id", forecast.sowing().id())
        .put("crop", forecast.sowing().crop())
        .put("trays", forecast.sowing().trays())
        .put("needed", forecast.sowing().plantsNeeded())
        .put("onTime", forecast.onTime())
        .put("late", forecast.late())
        .put("chanceMet", forecast.chanceMet())
        .put("chanceMetLow", forecast.chanceMetLow())
        .put("chanceMetHigh", forecast.chanceMetHigh())
        .put("firstOut", forecast.firstOut())
        .put("medianOut", forecast.medianOut())
        .put("lastOut", forecast.lastOut());
  }

  private static PutJson place(Occupancy place) {
    return new PutJson()
        .put("name", place.name())
        .put("kind", place.kind().word())
        .put("spaces", place.spaces())
        .put("meanUse", place.meanUse())
        .put("peak", place.peak())
        .put("fullDays", place.fullDays());
  }
}

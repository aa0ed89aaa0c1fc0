package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;
import propcap.study.statistics.Difference;

/** Why what helps most by the space need not be what a comparison of purchases puts first. */
record BottleneckOrders(Bottlenecks answer) {
  /** Other orders than that by the space, in which another place comes first. */
  Optional<String> others() {
    Optional<Worth> bySpace = first(Trial::onTime, w -> w.more().plantsForEach());
    List<String> others = new ArrayList<>();
    first(Trial::onTime, w -> w.more().onTime().mean())
        .filter(w -> isAhead(w, bySpace, Trial::onTime))
        .ifPresent(w -> others.add(comesFirst("the plants", w, Trial::onTime, "")));
    String currency = Money.currency(answer.scenario()).map(c -> " " + c).orElse("");
    first(Trial::margin, w -> Objects.requireNonNull(w.more().margin()).mean())
        .filter(w -> isAhead(w, bySpace, Trial::margin))
        .ifPresent(w -> others.add(comesFirst("the margin", w, Trial::margin, currency)));
    return bySpace.isEmpty() || others.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "That order is by the space. By "
                + String.join(" and by ", others)
                + ". A comparison sets whole purchases side by side, each at its whole price, and may"
                + " put yet another first.");
  }

  /** Of the places of which a tenth more clearly brings something the one that ranks highest. */
  private Optional<Worth> first(
      Function<Trial, @Nullable Difference> what, ToDoubleFunction<Worth> rank) {
    return answer.worths().stream()
        .filter(
            w -> Optional.ofNullable(what.apply(w.more())).filter(Difference::isMore).isPresent())
        .max(Comparator.comparingDouble(rank));
  }

  /** Whether a place brings more than another for all that the springs tell. */
  private static boolean isAhead(
      Worth worth, Optional<Worth> other, Function<Trial, @Nullable Difference> what) {
    double low = Optional.ofNullable(what.apply(worth.more())).map(Difference::low).orElseThrow();
    return other
        .flatMap(o -> Optional.ofNullable(what.apply(o.more())))
        .filter(d -> d.high() >= low)
        .isEmpty();
  }

  private static String comesFirst(
      String by, Worth worth, Function<Trial, @Nullable Difference> what, String unit) {
    return "%s of a whole tenth %s %s first (%s: %s%s a season)"
        .formatted(
            by,
            worth.place().name(),
            worth.place().isHands() ? "come" : "comes",
            BottlenecksWords.more(worth.place(), worth.more().spaces()),
            Words.difference(Objects.requireNonNull(what.apply(worth.more()))),
            unit);
  }
}

package propcap.files.scenario;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import propcap.farm.PlaceKind;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;

/**
 * What the parts of a scenario must be to each other. What could not be read is not held against
 * the rest: its own fault is enough.
 */
final class ScenarioChecks {
  private final Layers layers;
  private final Map<String, PlaceFields> places;
  private final boolean placesOpen;
  private final Faults faults;

  ScenarioChecks(
      Layers layers, Map<String, PlaceFields> places, boolean placesOpen, Faults faults) {
    this.layers = layers;
    this.places = places;
    this.placesOpen = placesOpen;
    this.faults = faults;
  }

  /** A season needs a table to grow on and an area to harden off on. */
  void placesSuffice() {
    List<Node.Entry> written = layers.written("places");
    if (placesOpen || written.isEmpty()) {
      return;
    }
    for (PlaceKind kind : List.of(PlaceKind.TABLE, PlaceKind.HARDENING)) {
      List<PlaceFields> ofKind = places.values().stream().filter(p -> p.mayBe(kind)).toList();
      if (ofKind.stream().noneMatch(PlaceFields::mayBeOpen)) {
        FilePosition spot = closedAt(ofKind).orElse(written.get(written.size() - 1).spot());
        faults.add(
            spot,
            "no open place of kind " + kind.word(),
            "at least one with spaces: nothing gets through a season without");
      }
    }
  }

  /** A crop's places must be there, and be places where seed can come up. */
  void cropsHavePlaces(CropList crops) {
    crops
        .byName()
        .forEach(
            (name, crop) -> {
              for (Node.Text text : crop.places()) {
                if (faults.isFull(text.spot().file())) {
                  break;
                }
                PlaceFields place = places.get(text.text().strip());
                if (place == null && !placesOpen) {
                  faults.add(
                      text.spot(),
                      "no place is named " + text.kind(),
                      FaultWords.oneOf(text.text().strip(), places.keySet()));
                } else if (place != null
                    && place.kind().isPresent()
                    && !place.kind().get().canGerminate()) {
                  faults.add(
                      text.spot(),
                      text.kind() + " is a hardening area, where nothing germinates",
                      "a heat bench, a chamber or a table");
                }
              }
            });
  }

  /** What is sown must be in the crop list, fall within the season and have room somewhere. */
  void sowingsAreDue(SowingPlan plan, CropList crops, Optional<Season> season) {
    Set<String> roomless = new HashSet<>();
    for (SowingPlan.Line line : plan.lines()) {
      CropFields crop = crops.byName().get(line.crop());
      if (crop != null && roomless.add(line.crop())) {
        hasRoom(line.crop(), crop, crops.placesOf(line.crop()));
      } else if (crop == null && !line.crop().isEmpty() && !crops.isOpen()) {
        line.fields()
            .wrong(
                "crop",
                "which the crop list lacks",
                FaultWords.oneOf(line.crop(), crops.byName().keySet()));
      }
      if (line.sow() != null && season.isPresent() && !season.get().contains(line.sow())) {
        line.fields()
            .wrong("sow", "outside the season", season.get().start() + " to " + season.get().end());
        continue;
      }
      line.sowing().ifPresent(s -> choicesFit(line.fields(), s, crops, season));
      if (line.fields().sound() && season.isPresent()) {
        line.sowing().ifPresent(s -> new SowingDates(line.fields(), s, season.get()).check());
      }
      if (line.fields().sound() && line.sowing().isPresent() && !line.isDropped()) {
        Sowing sowing = line.sowing().get();
        Optional.ofNullable(crops.crops().get(sowing.crop()))
            .ifPresent(grown -> SowingDates.doubt(line.fields(), sowing, grown));
      }
    }
  }

  /** A sowing's own place must be one of its crop's, and its days must lie in the season. */
  private static void choicesFit(
      Fields fields, Sowing sowing, CropList crops, Optional<Season> season) {
    Collection<String> places = crops.placesOf(sowing.crop());
    String place = sowing.germinateIn();
    if (place != null && !places.isEmpty() && !places.contains(place)) {
      fields.wrong(
          "germinate-in",
          "where " + sowing.crop() + " does not germinate",
          FaultWords.oneOf(place, places));
    }
    LocalDate from = sowing.leeway().from();
    LocalDate to = sowing.leeway().to();
    if (season.isPresent() && from != null && from.isAfter(season.get().end())) {
      fields.wrong("sow-from", "after the season", "a day up to " + season.get().end());
    }
    if (season.isPresent() && to != null && to.isBefore(season.get().start())) {
      fields.wrong("sow-to", "before the season", "a day from " + season.get().start() + " on");
    }
  }

  private void hasRoom(String name, CropFields crop, Collection<String> names) {
    List<PlaceFields> known = names.stream().map(places::get).filter(Objects::nonNull).toList();
    boolean none = known.stream().noneMatch(PlaceFields::mayBeOpen);
    if (!names.isEmpty() && known.size() == names.size() && none) {
      faults.add(
          closedLater(known).orElse(crop.placesSpot()),
          "no open place can germinate " + name + ": " + String.join(", ", names),
          "spaces in one of them, or another place in germinate-in");
    }
  }

  /** Where a scenario that extends another closes one of the places. */
  private Optional<FilePosition> closedLater(List<PlaceFields> closed) {
    return closed.stream()
        .flatMap(p -> p.written().entry("spaces").stream())
        .map(e -> e.value().spot())
        .filter(s -> !s.file().equals(layers.files().get(0).spot().file()))
        .findFirst();
  }

  private Optional<FilePosition> closedAt(List<PlaceFields> closed) {
    return closedLater(closed)
        .or(
            () ->
                closed.stream()
                    .flatMap(p -> p.written().entry("spaces").stream())
                    .map(e -> e.value().spot())
                    .max(Comparator.comparingInt(FilePosition::line)));
  }
}

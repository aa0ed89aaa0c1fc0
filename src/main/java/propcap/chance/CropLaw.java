package propcap.chance;

import propcap.farm.Crop;

/**
 * What of a crop decides its trays' luck. Crops that differ in nothing of this have the same luck:
 * where they stand, and for how long, has no part in it.
 */
record CropLaw(
    int cells,
    int seedsPerCell,
    Crop.Germination germination,
    Crop.Emergence emergence,
    int cellsToLeave,
    double spread,
    Crop.DampingOff dampingOff) {
  static CropLaw of(Crop crop) {
    return new CropLaw(
        crop.cells(),
        crop.seedsPerCell(),
        crop.germination(),
        crop.emergence(),
        crop.cellsToLeave(),
        crop.growingOn().spread(),
        crop.growingOn().dampingOff());
  }
}

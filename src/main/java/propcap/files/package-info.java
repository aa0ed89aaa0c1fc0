/** A grower's YAML and CSV files, read into the farm's records with every fault at its place. */
@NullMarked
package propcap.files;

import org.jspecify.annotations.NullMarked;

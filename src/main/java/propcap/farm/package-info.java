/** The grower's world as immutable records. No files, no chance, no time passing. */
@NullMarked
package propcap.farm;

import org.jspecify.annotations.NullMarked;

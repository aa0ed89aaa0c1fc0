/** From counts of germinated seeds to curves, shares and thermal times. */
@NullMarked
package propcap.evidence.germination;

import org.jspecify.annotations.NullMarked;

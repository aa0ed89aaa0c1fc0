/** From the grower's records to the simulator's inputs, with their error. */
@NullMarked
package propcap.evidence;

import org.jspecify.annotations.NullMarked;

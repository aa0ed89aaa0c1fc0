/** From logs of trays to how long stages take and what they lose. */
@NullMarked
package propcap.evidence.stages;

import org.jspecify.annotations.NullMarked;

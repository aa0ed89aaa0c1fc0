/** Which place holds the others up. */
@NullMarked
package propcap.report.bottleneck;

import org.jspecify.annotations.NullMarked;

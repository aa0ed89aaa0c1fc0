/** Which place or hands there are too few of. */
@NullMarked
package propcap.study.bottleneck;

import org.jspecify.annotations.NullMarked;

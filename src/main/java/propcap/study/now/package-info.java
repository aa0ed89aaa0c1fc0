/** A season that has begun: what is still to come, and what can be done. */
@NullMarked
package propcap.study.now;

import org.jspecify.annotations.NullMarked;

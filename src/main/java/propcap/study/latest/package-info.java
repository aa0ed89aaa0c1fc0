/** The last day on which it is worth sowing. */
@NullMarked
package propcap.study.latest;

import org.jspecify.annotations.NullMarked;

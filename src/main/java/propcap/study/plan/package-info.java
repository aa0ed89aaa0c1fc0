/** A better sowing plan: searched on few springs, proved on fresh ones. */
@NullMarked
package propcap.study.plan;

import org.jspecify.annotations.NullMarked;

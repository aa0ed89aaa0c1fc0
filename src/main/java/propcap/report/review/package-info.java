/** Looking back: what was forecast and what came, told. */
@NullMarked
package propcap.report.review;

import org.jspecify.annotations.NullMarked;

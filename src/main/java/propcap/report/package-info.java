/**
 * What a forecast and the answers to what to do say, as files that a grower reads and as files that
 * other programs read.
 */
@NullMarked
package propcap.report;

import org.jspecify.annotations.NullMarked;

/** What comes of many scenarios. */
@NullMarked
package propcap.report.sweep;

import org.jspecify.annotations.NullMarked;

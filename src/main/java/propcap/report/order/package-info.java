/** What to order. */
@NullMarked
package propcap.report.order;

import org.jspecify.annotations.NullMarked;

/** What a germination test tells. */
@NullMarked
package propcap.report.germination;

import org.jspecify.annotations.NullMarked;

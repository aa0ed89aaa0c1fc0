/** How large a place must be. */
@NullMarked
package propcap.report.size;

import org.jspecify.annotations.NullMarked;

/** How fast seasons run: measured, never tested. */
@NullMarked
package propcap.bench;

import org.jspecify.annotations.NullMarked;

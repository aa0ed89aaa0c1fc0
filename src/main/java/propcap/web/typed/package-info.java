/** What growers type into a field or paste into the plan, as the files write it. */
@NullMarked
package propcap.web.typed;

import org.jspecify.annotations.NullMarked;

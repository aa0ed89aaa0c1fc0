/** A scenario from all its files, its crops, plan, season so far and log. */
@NullMarked
package propcap.files.scenario;

import org.jspecify.annotations.NullMarked;

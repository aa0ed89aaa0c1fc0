/** What comes of a plan: plants on time, waiting, losses, hours. */
@NullMarked
package propcap.study.forecast;

import org.jspecify.annotations.NullMarked;

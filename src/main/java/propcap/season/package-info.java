/** One season: trays, places and the round, as an event simulation that draws nothing. */
@NullMarked
package propcap.season;

import org.jspecify.annotations.NullMarked;

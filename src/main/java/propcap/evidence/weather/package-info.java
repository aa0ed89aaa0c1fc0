/** From years of weather to frost dates, filled gaps and records made of normals. */
@NullMarked
package propcap.evidence.weather;

import org.jspecify.annotations.NullMarked;

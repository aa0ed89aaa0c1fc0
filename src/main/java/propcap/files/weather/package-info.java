/** Weather records: Propcap's own, stations' and normals. */
@NullMarked
package propcap.files.weather;

import org.jspecify.annotations.NullMarked;

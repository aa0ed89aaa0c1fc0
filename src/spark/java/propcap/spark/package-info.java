/** Seasons on the executors of an Apache Spark cluster. Compiled and packed with -Pspark alone. */
@NullMarked
package propcap.spark;

import org.jspecify.annotations.NullMarked;

/** The commands that make a scenario's inputs of records, and records of a scenario. */
@NullMarked
package propcap.cli.record;

import org.jspecify.annotations.NullMarked;

/** A log of this season walked day by day: what stood where, and which round had room for it. */
@org.jspecify.annotations.NullMarked
package propcap.past;

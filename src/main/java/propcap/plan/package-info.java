/**
 * A timetable of work that holds room: jobs with the days on which they may start, and places with
 * so many spaces. It knows no chance and no trade.
 */
@NullMarked
package propcap.plan;

import org.jspecify.annotations.NullMarked;

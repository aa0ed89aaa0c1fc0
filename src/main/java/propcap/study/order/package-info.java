/** Seed, trays, pots and mix for a plan. */
@NullMarked
package propcap.study.order;

import org.jspecify.annotations.NullMarked;

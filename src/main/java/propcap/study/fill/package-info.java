/** A plan from needs alone: when to sow, and how many trays. */
@NullMarked
package propcap.study.fill;

import org.jspecify.annotations.NullMarked;

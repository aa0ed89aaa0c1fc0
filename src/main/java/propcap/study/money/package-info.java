/** A season's accounts, what a change of places costs, and whether it pays. */
@NullMarked
package propcap.study.money;

import org.jspecify.annotations.NullMarked;

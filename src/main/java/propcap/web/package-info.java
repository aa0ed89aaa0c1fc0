/**
 * The page on which growers play with a scenario: a small server on this machine alone, the draft
 * that it keeps, and the studies that it runs one after another.
 */
@NullMarked
package propcap.web;

import org.jspecify.annotations.NullMarked;

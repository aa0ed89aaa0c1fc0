/** What the page asks of the server, read with care, and what it is answered. */
@NullMarked
package propcap.web.request;

import org.jspecify.annotations.NullMarked;

/** Sets the sheets as a PDF. */
@NullMarked
package org.underlee.report.packet.pdf;

import org.jspecify.annotations.NullMarked;

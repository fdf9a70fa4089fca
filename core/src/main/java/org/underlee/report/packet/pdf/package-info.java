/** Sets the sheets on pages: as a PDF, and as SVG. */
@NullMarked
package org.underlee.report.packet.pdf;

import org.jspecify.annotations.NullMarked;

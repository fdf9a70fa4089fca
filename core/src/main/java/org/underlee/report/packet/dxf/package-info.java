/** Writes drawings for those who draft. */
@NullMarked
package org.underlee.report.packet.dxf;

import org.jspecify.annotations.NullMarked;

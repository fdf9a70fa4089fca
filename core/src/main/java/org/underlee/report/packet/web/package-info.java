/** Sets the sheets as one web page. */
@NullMarked
package org.underlee.report.packet.web;

import org.jspecify.annotations.NullMarked;

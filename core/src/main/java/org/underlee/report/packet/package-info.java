/** What goes to the site: sheets of facts, made once and written as PDF, web page and drawings. */
@NullMarked
package org.underlee.report.packet;

import org.jspecify.annotations.NullMarked;

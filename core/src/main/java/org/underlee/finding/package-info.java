/** What the program noticed: what, where, measured, limit, source, and what to do. */
@NullMarked
package org.underlee.finding;

import org.jspecify.annotations.NullMarked;

/** Scenes drawn on a CPU into PNG, or as SVG. */
@NullMarked
package org.underlee.picture;

import org.jspecify.annotations.NullMarked;

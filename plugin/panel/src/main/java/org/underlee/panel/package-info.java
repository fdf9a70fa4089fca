/** The panel: a deck's underside beside its model, to look at and to work on. */
@NullMarked
package org.underlee.panel;

import org.jspecify.annotations.NullMarked;

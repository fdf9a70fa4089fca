/** From parts to IFC instances, spliced into a copy of the model, verified, saved atomically. */
@NullMarked
package org.underlee.writeback;

import org.jspecify.annotations.NullMarked;

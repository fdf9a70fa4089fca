/** Information Delivery Specifications (IDS 1.0): what a model must hold, read and checked. */
@NullMarked
package org.underlee.ids;

import org.jspecify.annotations.NullMarked;

/** From bays and a kit to every part in its place. */
@NullMarked
package org.underlee.layout;

import org.jspecify.annotations.NullMarked;

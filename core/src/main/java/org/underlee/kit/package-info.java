/** Parametric descriptions of drainage assemblies, read from JSON. */
@NullMarked
package org.underlee.kit;

import org.jspecify.annotations.NullMarked;

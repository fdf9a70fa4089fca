/** EXPRESS schemas (ISO 10303-11) read from the standard's files, and instances checked by them. */
@NullMarked
package org.underlee.schema;

import org.jspecify.annotations.NullMarked;

/** The whole story in one method. */
@NullMarked
package org.underlee.run;

import org.jspecify.annotations.NullMarked;

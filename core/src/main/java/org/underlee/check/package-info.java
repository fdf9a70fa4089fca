/** What a careful practitioner checks before work starts: one class a rule. */
@NullMarked
package org.underlee.check;

import org.jspecify.annotations.NullMarked;

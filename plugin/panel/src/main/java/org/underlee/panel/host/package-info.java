/** What the panel asks of the program that it sits in. */
@NullMarked
package org.underlee.panel.host;

import org.jspecify.annotations.NullMarked;

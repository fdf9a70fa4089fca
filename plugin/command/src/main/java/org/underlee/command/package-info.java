/** The command: thin verbs over the run. */
@NullMarked
package org.underlee.command;

import org.jspecify.annotations.NullMarked;

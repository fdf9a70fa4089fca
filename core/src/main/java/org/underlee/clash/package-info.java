/** What the assembly hits, what it comes too near to, and what it hides; grouped and followed. */
@NullMarked
package org.underlee.clash;

import org.jspecify.annotations.NullMarked;

/**
 * From building elements to members, roles, joist lines, fields and decks, each decision with its
 * reason.
 */
@NullMarked
package org.underlee.framing;

import org.jspecify.annotations.NullMarked;

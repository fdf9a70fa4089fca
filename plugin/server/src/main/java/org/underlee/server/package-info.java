/**
 * A client of a shared model server: revisions come as text, are worked on as files, and go back as
 * new revisions.
 */
@NullMarked
package org.underlee.server;

import org.jspecify.annotations.NullMarked;

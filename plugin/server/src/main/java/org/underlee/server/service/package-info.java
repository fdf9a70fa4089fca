/**
 * Underlee as a plugin of the model server: a service that drains a project's revisions, or reports
 * on them. Its jar is installed into the server; nothing else here uses it.
 */
@NullMarked
package org.underlee.server.service;

import org.jspecify.annotations.NullMarked;

/** Folders of models: the same job on each, in parallel, with a journal to go on from. */
@NullMarked
package org.underlee.run.batch;

import org.jspecify.annotations.NullMarked;

/** What the panel shows and does, without a screen: decisions, results, selection, tables. */
@NullMarked
package org.underlee.panel.model;

import org.jspecify.annotations.NullMarked;

package org.underlee.schema;

import org.underlee.finding.Rule;

/**
 * How a value breaks its type.
 *
 * @param words to follow the attribute's name: {@code is no REAL: the text 'x'}
 */
record Misfit(Rule rule, String words) {}

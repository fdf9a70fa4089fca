/** What is on the screen. No class here decides anything: it shows a view model and calls it. */
@NullMarked
package org.underlee.panel.view;

import org.jspecify.annotations.NullMarked;

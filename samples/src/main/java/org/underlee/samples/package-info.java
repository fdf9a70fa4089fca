/**
 * Invented decks that know their own measurements, and a writer that puts them into IFC in many
 * ways. Shares no code with the program: it is the independent witness its reader is tested
 * against. Lengths are millimetres throughout; the writer converts to the unit of the file.
 */
@NullMarked
package org.underlee.samples;

import org.jspecify.annotations.NullMarked;

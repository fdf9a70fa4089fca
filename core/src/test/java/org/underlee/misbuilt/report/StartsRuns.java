package org.underlee.misbuilt.report;

import org.underlee.misbuilt.run.DeckRun;

/** A report that knows more of the run than its records, and a screen. */
public record StartsRuns(DeckRun run, java.awt.Color colour) {}

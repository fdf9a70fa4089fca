package org.underlee.picture;

/**
 * Things, and over them what is written about them.
 *
 * @param things the same at every scale
 */
record Annotated(PlanDrawing things, Annotation words) implements ScaledDrawing {
  /** Writes about things, at one scale. */
  interface Annotation {
    /**
     * Adds texts, and the lines that go with them.
     *
     * @param mm metres of the drawing that a millimetre of paper shows
     */
    void write(PlanBuilder to, double mm);
  }

  @Override
  public String title() {
    return things.title();
  }

  @Override
  public PlanDrawing at(double denominator) {
    PlanBuilder all = new PlanBuilder().add(things);
    words.write(all, PlanSheet.metresPerMm(denominator));
    return all.build(title());
  }
}

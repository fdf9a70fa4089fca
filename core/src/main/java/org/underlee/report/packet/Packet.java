package org.underlee.report.packet;

import java.util.List;
import org.underlee.geom.Vec2;
import org.underlee.picture.Camera;
import org.underlee.picture.Scene;

/**
 * What goes to the site: every fact once, in the reader's language and units; the PDF, the web page
 * and the drawings are made of it.
 *
 * @param title the job
 * @param source the file it was made from, with the start of its hash: on every page
 * @param key the file's hash, which tells one job from another
 * @param sheets in the order of the work
 * @param bays what a bay needs, for the one who stands below it
 * @param marks marks and places along the gutter as JSON
 * @param scene all parts and framing, to be turned
 * @param camera where it is first seen from: below, as someone on the patio does
 */
public record Packet(
    Writing writing,
    String title,
    String source,
    String key,
    List<Sheet> sheets,
    List<BayCard> bays,
    String marks,
    Scene scene,
    Camera camera) {
  public Packet {
    sheets = List.copyOf(sheets);
    bays = List.copyOf(bays);
  }

  /**
   * One bay.
   *
   * @param id {@code deck-1/field-1/B6}
   * @param label {@code F1-B6}
   * @param plan names the drawing that it is in
   * @param outline where it lies there
   * @param blocks its marks, its pieces, what is special
   */
  public record BayCard(
      String id, String label, String plan, List<Vec2> outline, List<Block> blocks) {
    public BayCard {
      outline = List.copyOf(outline);
      blocks = List.copyOf(blocks);
    }
  }
}

package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.kit.Family;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Scene;
import org.underlee.run.Design;
import org.underlee.run.Survey;

/** Makes the packet of a design, sheet by sheet in the order of the work. */
public final class PacketBuilder {
  /** Of the file's hash, on every page: enough to tell two states of a model apart. */
  private static final int HASH_SHOWN = 8;

  private PacketBuilder() {}

  /**
   * The packet of a design.
   *
   * @throws InputException when the kit is of a family that the sheets have no words for
   */
  public static Packet of(Design design, Writing writing) {
    if (design.layout().kit().family() != Family.PANS) {
      throw new InputException(
          Place.NOWHERE,
          "kit "
              + design.layout().kit().id()
              + " is of the family "
              + design.layout().kit().family().word()
              + "; a packet can be made for pans only",
          "Use --kit with a kit of pans, or take design and takeoff to the site.");
    }
    Job job = new Job(design, writing);
    Survey survey = design.survey();
    Scene scene = DeckScene.of(survey.framing(), survey.elements(), Optional.of(design.layout()));
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(new CoverSheet(job).sheet(scene));
    sheets.add(new WorkSheets(job).site());
    sheets.add(new FramingSheet(job).sheet());
    sheets.add(new BuySheet(job).sheet());
    sheets.add(new CuttingSheet(job).sheet());
    sheets.add(new CutSheet(job).sheet());
    sheets.add(new TemplateSheet(job).sheet());
    sheets.add(new WorkSheets(job).build());
    sheets.add(new MarkSheet(job).sheet());
    sheets.add(new SectionSheet(job).sheet());
    sheets.add(new GutterSheet(job).sheet());
    sheets.add(new WorkSheets(job).hose());
    sheets.add(new StickerSheet(job).sheet());
    sheets.add(new WorkSheets(job).care());
    sheets.add(new WorkSheets(job).sources());
    sheets.removeIf(s -> s.blocks().isEmpty());
    String file = survey.source().file();
    String sha = survey.source().sha256();
    return new Packet(
        writing,
        writing.say("packet.title", file),
        file + " · " + sha.substring(0, HASH_SHOWN),
        sha,
        sheets,
        new BayCards(job).cards(),
        scene,
        DeckScene.fromBelow(survey.framing(), scene, 1));
  }
}

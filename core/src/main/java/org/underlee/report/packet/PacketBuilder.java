package org.underlee.report.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.underlee.picture.DeckScene;
import org.underlee.picture.Scene;
import org.underlee.run.Design;
import org.underlee.run.Survey;

/** Makes the packet of a design, sheet by sheet in the order of the work. */
public final class PacketBuilder {
  /** Of the file's hash, on every page: enough to tell two states of a model apart. */
  private static final int HASH_SHOWN = 8;

  private PacketBuilder() {}

  public static Packet of(Design design, Writing writing) {
    Job job = new Job(design, writing);
    Survey survey = design.survey();
    Scene scene = DeckScene.of(survey.framing(), survey.elements(), Optional.of(design.layout()));
    List<Sheet> sheets = new ArrayList<>();
    sheets.add(new CoverSheet(job).sheet(scene));
    sheets.add(new SiteSheet(job).sheet());
    sheets.add(new FramingSheet(job).sheet());
    sheets.add(new BuySheet(job).sheet());
    sheets.add(new CuttingSheet(job).sheet());
    sheets.add(new CutSheet(job).sheet());
    sheets.add(new TemplateSheet(job).sheet());
    sheets.add(new BuildSheet(job).sheet());
    sheets.add(new MarkSheet(job).sheet());
    sheets.add(new SectionSheet(job).sheet());
    sheets.add(new GutterSheet(job).sheet());
    sheets.add(new HoseSheet(job).sheet());
    sheets.add(new StickerSheet(job).sheet());
    sheets.add(new CareSheet(job).sheet());
    sheets.add(new SourceSheet(job).sheet());
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
        new MarksJson(job).write(),
        scene,
        DeckScene.fromBelow(survey.framing(), scene, 1));
  }
}

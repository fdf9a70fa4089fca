package org.underlee.report.packet;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
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
    List<Sheet> sheets = sheets(job, scene);
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
        DeckScene.fromBelow(survey.framing(), Optional.of(design.layout()), scene, 1));
  }

  /** Each for itself, so that as many are made at a time as there are processors. */
  private static List<Sheet> sheets(Job job, Scene scene) {
    return Stream.<Supplier<Sheet>>of(
            () -> new CoverSheet(job).sheet(scene),
            () -> new SiteSheet(job).sheet(),
            () -> new FramingSheet(job).sheet(),
            () -> new BuySheet(job).sheet(),
            () -> new CuttingSheet(job).sheet(),
            () -> new CutSheet(job).sheet(),
            () -> new TemplateSheet(job).sheet(),
            () -> new BuildSheet(job).sheet(),
            () -> new MarkSheet(job).sheet(),
            () -> new SectionSheet(job).sheet(),
            () -> new GutterSheet(job).sheet(),
            () -> new HoseSheet(job).sheet(),
            () -> new StickerSheet(job).sheet(),
            () -> new CareSheet(job).sheet(),
            () -> new SourceSheet(job).sheet())
        .parallel()
        .map(Supplier::get)
        .filter(s -> !s.blocks().isEmpty())
        .toList();
  }
}

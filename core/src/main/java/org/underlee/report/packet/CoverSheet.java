package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.CAUTION;
import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.underlee.finding.Finding;
import org.underlee.finding.Level;
import org.underlee.layout.PartKind;
import org.underlee.picture.Camera;
import org.underlee.picture.DeckScene;
import org.underlee.picture.RasterSettings;
import org.underlee.picture.Renderer;
import org.underlee.picture.Scene;
import org.underlee.report.packet.Block.Fact;

/** The job in one glance: a picture, how much of what, what to be careful about. */
record CoverSheet(Job job) {
  private static final int WIDTH = 1600;
  private static final int HEIGHT = 800;

  Sheet sheet(Scene scene) {
    List<Block> blocks = new ArrayList<>();
    if (!scene.shapes().isEmpty()) {
      RasterSettings settings =
          RasterSettings.of(WIDTH, HEIGHT).withThreads(Runtime.getRuntime().availableProcessors());
      Camera camera =
          DeckScene.fromBelow(
              job.design().survey().framing(),
              Optional.of(job.design().layout()),
              scene,
              settings.aspect());
      blocks.add(
          new Block.Picture(
              "below", job.say("cover.picture"), Renderer.draw(scene, camera, settings)));
    }
    blocks.add(new Block.Facts(facts()));
    blocks.add(new Block.Heading(job.say("cover.counts")));
    blocks.add(counts());
    blocks.add(new Block.Heading(job.say("cover.beforeYouStart")));
    blocks.add(new Block.Text(job.say("cover.caution.structure"), CAUTION));
    blocks.add(new Block.Text(job.say("cover.caution.site"), CAUTION));
    if (job.design().survey().framing().fields().anyMatch(f -> f.isAssumed())) {
      blocks.add(new Block.Text(job.say("cover.caution.assumed"), CAUTION));
    }
    blocks.addAll(findings());
    return new Sheet("cover", job.say("cover.title"), false, blocks);
  }

  private List<Fact> facts() {
    List<Fact> facts = new ArrayList<>();
    facts.add(new Fact(job.say("cover.deckArea"), job.writing().area(job.design().proof().area())));
    facts.add(
        new Fact(job.say("cover.dry"), job.writing().percent(job.design().proof().dryFraction())));
    facts.add(new Fact(job.say("cover.kit"), job.writing().translated(job.kit().name())));
    for (Job.Place place : job.places()) {
      facts.add(new Fact(job.say("cover.field", place.mark()), field(place)));
    }
    return facts;
  }

  private String field(Job.Place place) {
    return job.say(
        "cover.field.value",
        place.served().size(),
        job.writing().fall(place.layout().fall()),
        job.length(place.layout().run()));
  }

  private Block counts() {
    List<List<String>> rows = new ArrayList<>();
    for (PartKind kind : PartKind.values()) {
      int count =
          job.design().layout().parts().stream()
              .filter(p -> p.kind() == kind)
              .mapToInt(p -> p.count())
              .sum();
      if (count > 0) {
        rows.add(List.of(Integer.toString(count), job.word(kind)));
      }
    }
    return new Block.Facts(rows.stream().map(r -> new Fact(r.get(1), r.get(0))).toList());
  }

  /** What must be put right, then what to look at; notes are with the sources. */
  private List<Block> findings() {
    List<Finding> grave =
        job.design().findings().stream()
            .filter(f -> f.level() != Level.NOTE)
            .sorted(Comparator.comparing(Finding::level).reversed())
            .toList();
    List<Block> blocks = new ArrayList<>();
    if (!grave.isEmpty()) {
      blocks.add(new Block.Heading(job.say("cover.findings")));
    }
    for (Finding finding : grave) {
      String text =
          job.say("level." + finding.level().word())
              + ": "
              + job.told(finding)
              + finding.fix().map(f -> " " + job.told(f.words())).orElse("");
      blocks.add(new Block.Text(text, finding.level() == Level.ERROR ? CAUTION : PLAIN));
    }
    return blocks;
  }
}

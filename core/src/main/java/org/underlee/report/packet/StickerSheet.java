package org.underlee.report.packet;

import java.util.List;
import java.util.Set;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;

/** One label for each piece that is cut or formed: what it is, how long, which end is up. */
record StickerSheet(Job job) {
  /** Fittings bought ready are told apart by where they go, and need no label. */
  private static final Set<PartKind> UNLABELLED =
      Set.of(
          PartKind.FASTENER,
          PartKind.HANGER,
          PartKind.STRAP,
          PartKind.END_CAP,
          PartKind.OUTLET,
          PartKind.ELBOW,
          PartKind.TAPE);

  Sheet sheet() {
    List<Block.Sticker> all =
        job.design().layout().parts().stream()
            .filter(p -> !UNLABELLED.contains(p.kind()))
            .map(this::sticker)
            .toList();
    return new Sheet(
        "labels",
        job.say("labels.title"),
        false,
        List.of(new Block.Text(job.say("labels.how"), Block.Tone.PLAIN), new Block.Stickers(all)));
  }

  private Block.Sticker sticker(Part part) {
    String size = job.cut(part.cutLength());
    String wide =
        part.sheetWidth().isPresent()
            ? size + " × " + job.cut(part.sheetWidth().getAsDouble())
            : size;
    String bay = part.bay().map(b -> " · " + job.say("labels.bay", b)).orElse("");
    return new Block.Sticker(part.label(), job.word(part.kind()) + bay, wide, end(part.kind()));
  }

  private String end(PartKind kind) {
    return switch (kind) {
      case HEAD_RAIL -> job.say("labels.end.head");
      case RIDGE_CAP -> job.say("labels.end.ridge");
      case GUTTER, FLASHING -> job.say("labels.end.gutter");
      case DOWNSPOUT, BATTEN_HANGER -> job.say("labels.end.downspout");
      case SADDLE -> job.say("labels.end.saddle");
      case BATTEN -> job.say("labels.end.batten");
      default -> job.say("labels.end.house");
    };
  }
}

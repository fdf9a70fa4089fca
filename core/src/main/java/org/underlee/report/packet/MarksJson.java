package org.underlee.report.packet;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.underlee.layout.Part;
import org.underlee.layout.PartKind;
import org.underlee.report.Json;
import org.underlee.report.packet.GutterSheet.Span;
import org.underlee.report.packet.SeatMarks.Mark;
import org.underlee.report.packet.SeatMarks.Row;

/**
 * What the packet measures on the parts as they lie, {@code underlee/marks/1}: marks on joists and
 * places along the gutter, in millimetres, for whoever sets out with an instrument.
 */
record MarksJson(Job job) {
  String write() {
    ObjectNode root = Json.report("marks", job.design().survey().source());
    ArrayNode fields = root.putArray("fields");
    for (Job.Place place : job.places()) {
      ObjectNode field = fields.addObject();
      field.put("id", place.layout().field()).put("mark", place.mark());
      ArrayNode rows = field.putArray("marks");
      SeatMarks.of(place).forEach(r -> row(rows.addObject(), r));
      gutter(field, place);
    }
    return Json.text(root);
  }

  private static void row(ObjectNode node, Row row) {
    node.put("joist", row.line().id());
    row.bay().ifPresent(b -> node.put("bay", b.id()));
    Json.strings(node.putArray("parts"), row.parts().stream().map(Part::label).toList());
    ArrayNode marks = node.putArray("at");
    for (Mark mark : row.marks()) {
      ObjectNode own = marks.addObject();
      own.put("point", mark.point().word());
      own.put("fromHouseMm", Json.mm(mark.fromHouse()));
      own.put("fromBeamMm", Json.mm(mark.fromBeam()));
      own.put("overJoistBottomMm", Json.mm(mark.height()));
      if (row.beam().height().isPresent()) {
        own.put("overBeamMm", Json.mm(mark.overBeam()));
      }
    }
  }

  private static void gutter(ObjectNode field, Job.Place place) {
    List<Span> gutters = GutterSheet.spans(place, PartKind.GUTTER);
    if (gutters.isEmpty()) {
      return;
    }
    double start = gutters.get(0).across().from();
    ArrayNode pieces = field.putArray("gutters");
    for (Span span : gutters) {
      ObjectNode own = pieces.addObject().put("label", span.part().label());
      own.put("beginsMm", Json.mm(span.across().from() - start));
      own.put("endsMm", Json.mm(span.across().to() - start));
      own.put("rimAtBeginMm", Json.mm(span.topFrom()));
      own.put("rimAtEndMm", Json.mm(span.topTo()));
    }
    ArrayNode flashings = field.putArray("flashings");
    for (Span span : GutterSheet.spans(place, PartKind.FLASHING)) {
      flashings
          .addObject()
          .put("label", span.part().label())
          .put("beginsMm", Json.mm(span.across().from() - start))
          .put("endsMm", Json.mm(span.across().to() - start));
    }
    ArrayNode fittings = field.putArray("alongGutter");
    for (PartKind kind : GutterSheet.FITTINGS) {
      for (Span span : GutterSheet.spans(place, kind)) {
        fittings
            .addObject()
            .put("label", span.part().label())
            .put("kind", kind.word())
            .put("middleMm", Json.mm(span.middle() - start))
            .put("lowestMm", Json.mm(span.bottom()));
      }
    }
  }
}

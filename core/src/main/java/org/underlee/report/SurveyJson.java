package org.underlee.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.bay.Block;
import org.underlee.bay.Crossing;
import org.underlee.framing.Deck;
import org.underlee.framing.Field;
import org.underlee.framing.Framing;
import org.underlee.framing.JoistLine;
import org.underlee.framing.Member;
import org.underlee.framing.Role;
import org.underlee.framing.RoleGiven;
import org.underlee.framing.Storey;
import org.underlee.geom.Vec3;
import org.underlee.run.Survey;

/** Writes a survey as JSON, {@code underlee/survey/1}. */
public final class SurveyJson {
  private static final int DIRECTION_DECIMALS = 9;

  private SurveyJson() {}

  public static String write(Survey survey) {
    ObjectNode root = Json.report("survey", survey.source());
    if (!survey.services().isEmpty()) {
      ArrayNode services = root.putArray("services");
      survey.services().forEach(s -> Json.source(services.addObject(), s));
    }
    survey
        .request()
        .overrides()
        .ifPresent(
            o ->
                root.putObject("overrides")
                    .put("file", o.file())
                    .put("entries", o.told().globalIds().size()));
    decks(root, survey);
    roles(root, survey.framing());
    Json.notMeasured(root, survey.framing().notMeasured());
    Json.findings(root, survey.findings());
    return Json.text(root);
  }

  static void decks(ObjectNode root, Survey survey) {
    ArrayNode decks = root.putArray("decks");
    for (Deck deck : survey.framing().decks()) {
      ObjectNode node = decks.addObject();
      node.put("id", deck.id());
      node.put("storey", deck.storey().map(Storey::globalId).orElse(null));
      node.put("topMm", Json.mm(deck.top()));
      node.putObject("outside")
          .put("value", deck.outside().value())
          .put("why", deck.outside().why());
      ArrayNode fields = node.putArray("fields");
      deck.fields().forEach(f -> field(fields.addObject(), f, survey.baysOf(f).bays()));
    }
  }

  private static void field(ObjectNode node, Field field, List<Bay> bays) {
    node.put("id", field.id());
    Vec3 fall = field.frame().y();
    node.putArray("fallDirection")
        .add(Json.rounded(fall.x(), DIRECTION_DECIMALS))
        .add(Json.rounded(fall.y(), DIRECTION_DECIMALS));
    node.put("fallWhy", field.fallWhy());
    field
        .highLine()
        .ifPresent(
            h ->
                node.putObject("highLine")
                    .put("beside", h.other())
                    .put("atMm", Json.mm(h.station()))
                    .put("asked", h.asked()));
    if (field.isAssumed()) {
      node.put("assumed", true);
    }
    ArrayNode lines = node.putArray("joistLines");
    field.lines().forEach(l -> line(lines.addObject(), l));
    ids(node, "ledgers", field.supports(Role.LEDGER));
    ids(node, "rims", field.supports(Role.RIM));
    ids(
        node,
        "beams",
        Stream.concat(
                field.supports(Role.FLUSH_BEAM).stream(), field.supports(Role.DROP_BEAM).stream())
            .toList());
    ids(node, "posts", field.posts());
    ids(node, "headers", field.supports(Role.HEADER));
    ids(node, "trimmers", field.trimmers());
    ArrayNode array = node.putArray("bays");
    bays.forEach(b -> bay(array.addObject(), b));
  }

  private static void line(ObjectNode node, JoistLine line) {
    node.put("id", line.id());
    Json.strings(node.putArray("members"), line.plies().stream().map(Member::id).toList());
    node.put("plies", line.pliesAbreast());
    node.put("widthMm", Json.mm(line.width()));
    node.put("depthMm", Json.mm(line.depth()));
    node.put("why", line.why());
  }

  private static void bay(ObjectNode node, Bay bay) {
    node.put("id", bay.id());
    node.putArray("between").add(bay.left().id()).add(bay.right().id());
    node.put("clearWidthHighMm", Json.mm(bay.clearWidthHigh()));
    node.put("clearWidthLowMm", Json.mm(bay.clearWidthLow()));
    node.put("clearWidthNarrowestMm", Json.mm(bay.clearWidthNarrowest()));
    ArrayNode widths = node.putArray("clearWidths");
    bay.clearWidths()
        .forEach(
            w ->
                widths.addObject().put("atMm", Json.mm(w.at())).put("widthMm", Json.mm(w.width())));
    node.put("lengthMm", Json.mm(bay.length()));
    ArrayNode depths = node.putArray("usableDepths");
    bay.usableDepths().forEach(d -> depth(depths.addObject(), d));
    ArrayNode blocking = node.putArray("blocking");
    bay.blocking().forEach(b -> block(blocking.addObject(), b));
    ArrayNode bridging = node.putArray("bridging");
    bay.bridging().forEach(b -> block(bridging.addObject(), b));
    ArrayNode crossings = node.putArray("crossings");
    bay.crossings().forEach(c -> crossing(crossings.addObject(), c));
  }

  private static void depth(ObjectNode node, Bay.Depth depth) {
    node.put("fromMm", Json.mm(depth.from()));
    node.put("toMm", Json.mm(depth.to()));
    node.put("depthMm", Json.mm(depth.depth()));
  }

  private static void block(ObjectNode node, Block block) {
    node.put("member", block.member().id());
    node.put("atMm", Json.mm(block.at()));
    node.put("thicknessMm", Json.mm(block.thickness()));
    node.put("bottomAboveJoistBottomMm", Json.mm(block.bottom()));
  }

  private static void crossing(ObjectNode node, Crossing crossing) {
    node.put("element", crossing.element().globalId());
    crossing.element().file().ifPresent(f -> node.put("file", f));
    node.put("ifcClass", crossing.element().ifcClass());
    crossing.insulation().ifPresent(i -> node.put("insulation", i.globalId()));
    node.put("way", crossing.way().word());
    node.put("sizeMm", Json.mm(crossing.size()));
    node.put("atMm", Json.mm(crossing.at()));
    node.put("acrossMm", Json.mm(crossing.across()));
  }

  private static void roles(ObjectNode root, Framing framing) {
    ArrayNode array = root.putArray("roles");
    for (RoleGiven given : framing.roles()) {
      array
          .addObject()
          .put("member", given.member().id())
          .put("role", given.role().word())
          .put("confidence", Json.rounded(given.confidence(), 2))
          .put("why", given.why());
    }
  }

  private static void ids(ObjectNode node, String name, Collection<Member> members) {
    Json.strings(node.putArray(name), members.stream().map(Member::id).toList());
  }
}

package org.underlee.samples;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Frames one field. Positions are given in the field's own frame: {@code v} runs from the ledger's
 * face toward the rim (the fall), {@code u = v × up}, so u points to the right of someone who
 * stands at the ledger and looks along the fall, and (u, v, up) is right-handed. Lines are added in
 * order of u; J1 has the smallest. Heights are heights of the sample.
 */
final class FieldBuilder {
  /** A strip narrower than this is left open. */
  private static final double LEAST_BOARD = 40;

  private final String key;
  private final Frame frame;
  private final double run;
  private final double joistTop;
  private final List<Member> members;
  private final List<JoistLine> lines = new ArrayList<>();
  private final Map<Role, List<String>> supports = new EnumMap<>(Role.class);
  private final List<FieldPlan.Block> blocks = new ArrayList<>();
  private final List<FieldPlan.Service> services = new ArrayList<>();
  private String material = "Treated softwood";
  private int level = 1;
  private int boards;

  /**
   * @param origin on the ledger's face, where u is zero, at height zero
   * @param fall unit vector, horizontal
   * @param run clear, from the ledger's face to the face at the low end
   * @param members receives what is built
   */
  FieldBuilder(
      String key, Xyz origin, Xyz fall, double run, double joistTop, List<Member> members) {
    this.key = key;
    this.frame = Frame.of(origin, fall.cross(Xyz.Z), fall);
    this.run = run;
    this.joistTop = joistTop;
    this.members = members;
  }

  /** What the members that follow are made of. */
  FieldBuilder of(String newMaterial) {
    material = newMaterial;
    return this;
  }

  /** The storey of the members that follow. */
  FieldBuilder on(int newLevel) {
    level = newLevel;
    return this;
  }

  /** A joist line parallel to the fall, its middle at {@code u}. */
  FieldBuilder line(int plies, String size, Section ply, double u) {
    return line(plies, size, ply, u, u);
  }

  /** A joist line whose middle is at {@code uHigh} at the ledger and at {@code uLow} at the rim. */
  FieldBuilder line(int plies, String size, Section ply, double uHigh, double uLow) {
    String id = "J" + (lines.size() + 1);
    double lean = (uLow - uHigh) / run;
    double stretch = StrictMath.hypot(1, lean);
    double pitch = ply.width() * stretch; // of one ply, along u
    List<String> keys = new ArrayList<>();
    for (int i = 0; i < plies; i++) {
      double shift = (i - (plies - 1) / 2.0) * pitch;
      Xyz start = new Xyz(uHigh + shift, 0, joistTop - ply.depth() / 2);
      Xyz axis = new Xyz(lean, 1, 0).unit();
      Frame along = Frame.of(start, axis, Xyz.Z.cross(axis));
      Solid solid = new Solid(along, run * stretch, ply, -lean, -lean);
      keys.add(add(id + (plies > 1 ? "/ply-" + (i + 1) : ""), Role.JOIST, size, solid));
    }
    double half = plies * pitch / 2;
    lines.add(
        new JoistLine(
            id,
            List.copyOf(keys),
            plies * ply.width(),
            ply.depth(),
            uHigh - half,
            uLow - half,
            uHigh + half,
            uLow + half));
    return this;
  }

  /** The ledger, its face at v = 0, its top flush with the joists. */
  FieldBuilder ledger(String size, Section section, double from, double to) {
    Solid solid =
        Bars.alongU(section, from, to, -section.width() / 2, Bars.topped(section, joistTop));
    return support("ledger", Role.LEDGER, size, solid);
  }

  /** A flush beam in the ledger's place, where the deck stands free. */
  FieldBuilder beamAtHighEnd(String size, Section section, double from, double to) {
    Solid solid =
        Bars.alongU(section, from, to, -section.width() / 2, Bars.topped(section, joistTop));
    return support("beam-high", Role.BEAM, size, solid);
  }

  /** The rim, its face at the end of the clear run, its top flush with the joists. */
  FieldBuilder rim(String size, Section section, double from, double to) {
    return support("rim", Role.RIM, size, atLowEnd(section, from, to));
  }

  /** A beam that the joists frame into at the low end, its top flush with them. */
  FieldBuilder flushBeam(String size, Section section, double from, double to) {
    return support("beam", Role.BEAM, size, atLowEnd(section, from, to));
  }

  /** A beam under the joists; {@code vNear} is the face toward the house of its first ply. */
  FieldBuilder dropBeam(
      int plies, String size, Section ply, double vNear, double from, double to, double top) {
    for (int i = 0; i < plies; i++) {
      double v = vNear + (i + 0.5) * ply.width();
      support(
          "beam-" + (i + 1), Role.BEAM, size, Bars.alongU(ply, from, to, v, Bars.topped(ply, top)));
    }
    return this;
  }

  /** A member of another field that this one is also carried by. */
  FieldBuilder carriedBy(Role role, String memberKey) {
    supports.computeIfAbsent(role, r -> new ArrayList<>()).add(memberKey);
    return this;
  }

  FieldBuilder post(
      String name, String size, Section section, double u, double v, double bottom, double top) {
    return support(name, Role.POST, size, Bars.upright(section, u, v, bottom, top));
  }

  /**
   * A block from joist to joist.
   *
   * @param bay from 0
   * @param at station of its middle
   * @param below from the joist tops down to its top
   */
  FieldBuilder block(int bay, String size, Section section, double at, double below) {
    JoistLine first = lines.get(bay);
    JoistLine second = lines.get(bay + 1);
    double from = between(first.lastFaceHigh(), first.lastFaceLow(), at);
    double to = between(second.firstFaceHigh(), second.firstFaceLow(), at);
    double top = joistTop - below;
    Frame axis = Bars.alongU(section, from, to, at, Bars.topped(section, top)).frame();
    double startSkew = (first.lastFaceLow() - first.lastFaceHigh()) / run;
    double endSkew = (second.firstFaceLow() - second.firstFaceHigh()) / run;
    Solid solid = new Solid(axis, to - from, section, startSkew, endSkew);
    String name = "block/" + (bay + 1) + "/" + blocks.size();
    double bottom = top - section.depth() - (joistTop - first.depth());
    blocks.add(
        new FieldPlan.Block(
            add(name, Role.BLOCKING, size, solid), bay, at, section.width(), bottom));
    return this;
  }

  /** A pipe that stands in bay {@code bay}; {@code across} is from the face of its first line. */
  FieldBuilder standingPipe(
      String name, int bay, double diameter, double at, double across, double from, double to) {
    double u = across + between(lines.get(bay).lastFaceHigh(), lines.get(bay).lastFaceLow(), at);
    Solid solid = Bars.upright(new Section.Round(diameter), u, at, from, to);
    String pipe = add(name, Role.PIPE, Sizes.round(diameter), solid);
    services.add(new FieldPlan.Service(pipe, bay, "through", diameter, at, across));
    return this;
  }

  /** A pipe that lies in bay {@code bay} from station {@code from} to {@code to}. */
  FieldBuilder pipeAlong(
      String name, int bay, double diameter, double from, double to, double across, double z) {
    double u = lines.get(bay).lastFaceHigh() + across;
    Solid solid = Bars.alongV(new Section.Round(diameter), u, from, to, z);
    String pipe = add(name, Role.PIPE, Sizes.round(diameter), solid);
    services.add(new FieldPlan.Service(pipe, bay, "along", diameter, (from + to) / 2, across));
    return this;
  }

  /** A level pipe at station {@code at} from the middle of one line to the middle of another. */
  FieldBuilder pipeAcross(
      String name, int firstLine, int lastLine, double diameter, double at, double z) {
    Solid solid =
        Bars.alongU(
            new Section.Round(diameter), middle(firstLine, at), middle(lastLine, at), at, z);
    String pipe = add(name, Role.PIPE, Sizes.round(diameter), solid);
    for (int bay = firstLine; bay < lastLine; bay++) {
      services.add(
          new FieldPlan.Service(pipe, bay, "across", diameter, at, clearWidth(bay, at) / 2));
    }
    return this;
  }

  /** Deck boards along u on the joists; the last one is ripped to end at {@code vTo}. */
  FieldBuilder boards(
      String size,
      Section.Rectangle board,
      double gap,
      double vFrom,
      double vTo,
      double from,
      double to) {
    double z = joistTop + board.depth() / 2;
    for (double v = vFrom; v + LEAST_BOARD <= vTo; v += board.width() + gap) {
      double width = Math.min(board.width(), vTo - v);
      Section section = new Section.Rectangle(width, board.depth());
      boards++;
      lying("board/" + boards, Role.DECK_BOARD, size, section, from, to, v + width / 2, z);
    }
    return this;
  }

  /** Anything else that lies along u. */
  FieldBuilder lying(
      String name,
      Role role,
      String size,
      Section section,
      double from,
      double to,
      double v,
      double z) {
    add(name, role, size, Bars.alongU(section, from, to, v, z));
    return this;
  }

  /** Anything else that stands. */
  FieldBuilder standing(
      String name,
      Role role,
      String size,
      Section section,
      double u,
      double v,
      double from,
      double to) {
    add(name, role, size, Bars.upright(section, u, v, from, to));
    return this;
  }

  int bays() {
    return lines.size() - 1;
  }

  FieldPlan plan() {
    return new FieldPlan(
        key,
        frame,
        run,
        joistTop,
        List.copyOf(lines),
        Map.copyOf(supports),
        List.copyOf(blocks),
        List.copyOf(services));
  }

  private double clearWidth(int bay, double at) {
    JoistLine first = lines.get(bay);
    JoistLine second = lines.get(bay + 1);
    return between(second.firstFaceHigh(), second.firstFaceLow(), at)
        - between(first.lastFaceHigh(), first.lastFaceLow(), at);
  }

  private double middle(int line, double at) {
    JoistLine l = lines.get(line);
    return (between(l.firstFaceHigh(), l.firstFaceLow(), at)
            + between(l.lastFaceHigh(), l.lastFaceLow(), at))
        / 2;
  }

  private double between(double high, double low, double at) {
    return high + (low - high) * at / run;
  }

  private Solid atLowEnd(Section section, double from, double to) {
    return Bars.alongU(
        section, from, to, run + section.width() / 2, Bars.topped(section, joistTop));
  }

  private FieldBuilder support(String name, Role role, String size, Solid solid) {
    supports.computeIfAbsent(role, r -> new ArrayList<>()).add(add(name, role, size, solid));
    return this;
  }

  private String add(String name, Role role, String size, Solid local) {
    String full = key + "/" + name;
    members.add(new Member(full, role, key, size, material, level, local.in(frame)));
    return full;
  }
}

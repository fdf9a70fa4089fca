package org.underlee.report.bcf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.clash.Issue;
import org.underlee.clash.Issues;
import org.underlee.clash.Tracked;
import org.underlee.clash.WayOut;
import org.underlee.geom.Transform;
import org.underlee.geom.Vec3;
import org.underlee.picture.Camera;
import org.underlee.picture.Png;
import org.underlee.run.Coordination;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Writes issues as BCF. In a file that is there already, everything that others put in stays: their
 * topics, and in ours the comments, the status that they set, who it is assigned to, and every
 * further file; only our title, description, picture and viewpoint are renewed.
 */
public final class BcfWriter {
  private static final String AUTHOR = "Underlee";
  private static final String TYPE = "Clash";

  /** Statuses that are ours to change; any other was set by a person. */
  private static final Set<String> OWN_STATUSES = Set.of("Open", "Accepted", "Closed");

  /** Metres from the middle of the picture: outside of any deck. */
  private static final double EYE = 20;

  private static final String VIEW = "viewpoint.bcfv";
  private static final String PICTURE = "snapshot.png";

  private final Coordination coordination;
  private final BcfVersion version;
  private final Map<String, byte[]> entries;

  private BcfWriter(Coordination coordination, BcfVersion version, Map<String, byte[]> entries) {
    this.coordination = coordination;
    this.version = version;
    this.entries = entries;
  }

  /** A new file. */
  public static byte[] write(Coordination coordination, BcfVersion version) {
    BcfWriter writer = new BcfWriter(coordination, version, new LinkedHashMap<>());
    return writer.all();
  }

  /**
   * The file with the issues of this run in place of those before; in its own edition.
   *
   * @throws org.underlee.finding.InputException when it cannot be read
   */
  public static byte[] renew(Coordination coordination, byte[] before, String name) {
    Map<String, byte[]> entries = BcfZip.read(before, name);
    return new BcfWriter(coordination, BcfReader.version(entries, name), entries).all();
  }

  private byte[] all() {
    entries.putIfAbsent("bcf.version", versionFile());
    if (!version.isOld()) {
      entries.putIfAbsent("extensions.xml", extensions());
    }
    coordination.issues().forEach(this::topic);
    return BcfZip.write(entries);
  }

  private byte[] versionFile() {
    Document d = HardXml.empty();
    Element root = Xml.add(d, "Version");
    root.setAttribute("VersionId", version.id());
    if (version.isOld()) {
      Xml.add(root, "DetailedVersion", version.id());
    }
    return HardXml.write(d);
  }

  private static byte[] extensions() {
    Document d = HardXml.empty();
    Element root = Xml.add(d, "Extensions");
    Xml.add(Xml.add(root, "TopicTypes"), "TopicType", TYPE);
    Element statuses = Xml.add(root, "TopicStatuses");
    OWN_STATUSES.stream().sorted().forEach(s -> Xml.add(statuses, "TopicStatus", s));
    Xml.add(Xml.add(root, "Users"), "User", AUTHOR);
    return HardXml.write(d);
  }

  private void topic(Tracked t) {
    String path = t.id() + BcfReader.MARKUP;
    byte[] before = entries.get(path);
    if (before == null && t.issue().isEmpty()) {
      return; // gone, and never told here
    }
    Document markup = before == null ? HardXml.empty() : HardXml.read(before, path);
    if (before == null) {
      create(markup, t);
    } else {
      renew(markup, t);
    }
    entries.put(path, HardXml.write(markup));
    t.issue().ifPresent(i -> view(t, i));
  }

  private void create(Document d, Tracked t) {
    Element root = Xml.add(d, "Markup");
    header(root);
    Element topic = Xml.add(root, "Topic");
    topic.setAttribute("Guid", t.id());
    topic.setAttribute("TopicType", TYPE);
    topic.setAttribute("TopicStatus", status(t));
    Xml.add(topic, "Title", t.title());
    labels(topic, t);
    Xml.add(topic, "CreationDate", date());
    Xml.add(topic, "CreationAuthor", AUTHOR);
    Xml.add(topic, "Description", description(t));
    Element view =
        version.isOld()
            ? Xml.add(root, "Viewpoints")
            : Xml.add(Xml.add(topic, "Viewpoints"), "ViewPoint");
    view.setAttribute("Guid", viewId(t));
    Xml.add(view, "Viewpoint", VIEW);
    Xml.add(view, "Snapshot", PICTURE);
  }

  private void labels(Element topic, Tracked t) {
    if (version.isOld()) {
      Xml.add(topic, "Labels", t.cause().word());
    } else {
      Xml.add(Xml.add(topic, "Labels"), "Label", t.cause().word());
    }
  }

  private void header(Element root) {
    Element header = Xml.add(root, "Header");
    Element files = version.isOld() ? header : Xml.add(header, "Files");
    Element own = file(files);
    own.setAttribute("IfcProject", coordination.project());
    Xml.add(own, "Filename", coordination.checked().survey().source().file());
    coordination
        .checked()
        .survey()
        .services()
        .forEach(s -> Xml.add(file(files), "Filename", s.file()));
  }

  private Element file(Element files) {
    Element file = Xml.add(files, "File");
    file.setAttribute(version.isOld() ? "isExternal" : "IsExternal", "true");
    return file;
  }

  private static void renew(Document d, Tracked t) {
    Element topic = Xml.child(d.getDocumentElement(), "Topic").orElseThrow();
    Xml.set(topic, "Title", t.title());
    if (t.issue().isPresent()) {
      Xml.set(topic, "Description", description(t));
    }
    if (OWN_STATUSES.contains(topic.getAttribute("TopicStatus"))) {
      topic.setAttribute("TopicStatus", status(t));
    }
  }

  private static String status(Tracked t) {
    return switch (t.status()) {
      case NEW, OPEN -> "Open";
      case ACCEPTED -> "Accepted";
      case GONE -> "Closed";
    };
  }

  /** The moment that the model says it was made: a run has no clock. */
  private String date() {
    String stamp = coordination.modelTime();
    return stamp.matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d.*")
        ? stamp.substring(0, "2000-01-01T00:00:00".length()) + "Z"
        : "1970-01-01T00:00:00Z";
  }

  private static String description(Tracked t) {
    List<String> lines = new ArrayList<>(List.of(t.title()));
    t.reason().ifPresent(r -> lines.add("Accepted: " + r));
    for (WayOut way : t.ways()) {
      lines.add("Way out: " + way.words());
    }
    t.issue()
        .ifPresent(
            i ->
                lines.add(
                    "Parts: "
                        + i.clashes().stream()
                            .map(c -> c.part().id())
                            .distinct()
                            .collect(Collectors.joining(", "))));
    return String.join("\n", lines);
  }

  private static String viewId(Tracked t) {
    return Issues.named(t.id() + "\nview");
  }

  private void view(Tracked t, Issue issue) {
    Snapshot shot = Snapshot.of(issue, coordination);
    Document d = HardXml.empty();
    Element root = Xml.add(d, "VisualizationInfo");
    root.setAttribute("Guid", viewId(t));
    components(root, issue);
    camera(root, shot.camera());
    entries.put(t.id() + "/" + VIEW, HardXml.write(d));
    entries.put(t.id() + "/" + PICTURE, Png.encode(shot.image()));
  }

  /** Selected: the things and the parts; all else is shown as well. */
  private static void components(Element root, Issue issue) {
    Set<String> ids = new LinkedHashSet<>();
    issue.things().forEach(t -> ids.add(t.element().globalId()));
    issue.clashes().forEach(c -> c.part().element().ifPresent(e -> ids.add(e.globalId())));
    Element components = Xml.add(root, "Components");
    Element selection = Xml.add(components, "Selection");
    ids.stream()
        .filter(id -> id.matches("[0-9A-Za-z_$]{22}"))
        .forEach(id -> Xml.add(selection, "Component").setAttribute("IfcGuid", id));
    if (!selection.hasChildNodes()) {
      components.removeChild(selection);
    }
    Xml.add(components, "Visibility").setAttribute("DefaultVisibility", "true");
  }

  /** The eye of a parallel camera may be anywhere on its axis: outside of what is drawn. */
  private void camera(Element root, Camera camera) {
    Transform frame = camera.frame();
    Element e = Xml.add(root, "OrthogonalCamera");
    point(e, "CameraViewPoint", frame.apply(Vec3.Z.times(EYE)));
    point(e, "CameraDirection", frame.z().negated());
    point(e, "CameraUpVector", frame.y());
    Xml.number(e, "ViewToWorldScale", camera.height());
    if (!version.isOld()) {
      Xml.number(e, "AspectRatio", Snapshot.aspect());
    }
  }

  private static void point(Element parent, String name, Vec3 p) {
    Element e = Xml.add(parent, name);
    Xml.number(e, "X", p.x());
    Xml.number(e, "Y", p.y());
    Xml.number(e, "Z", p.z());
  }
}

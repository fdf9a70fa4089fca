package org.underlee.report.bcf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Reads the topics of a BCF file, 2.1 or 3.0. */
public final class BcfReader {
  static final String MARKUP = "/markup.bcf";

  private BcfReader() {}

  /**
   * The topics in the order of the archive.
   *
   * @throws InputException for an archive that is damaged, over a limit, or of another edition
   */
  public static List<BcfTopic> read(byte[] bcf, String name) {
    Map<String, byte[]> entries = BcfZip.read(bcf, name);
    BcfVersion version = version(entries, name);
    List<BcfTopic> topics = new ArrayList<>();
    entries.forEach(
        (path, bytes) -> {
          if (path.toLowerCase(Locale.ROOT).endsWith(MARKUP)) {
            topics.add(topic(HardXml.read(bytes, path), path, entries, version));
          }
        });
    return topics;
  }

  static BcfVersion version(Map<String, byte[]> entries, String name) {
    byte[] file = entries.get("bcf.version");
    String id =
        file == null
            ? "none"
            : HardXml.read(file, "bcf.version").getDocumentElement().getAttribute("VersionId");
    for (BcfVersion version : BcfVersion.values()) {
      if (version.id().equals(id)) {
        return version;
      }
    }
    throw new InputException(
        Place.NOWHERE.inFile(name),
        "the BCF version is " + id + "; 2.1 and 3.0 are read",
        "Save it as BCF 2.1 or 3.0.");
  }

  private static BcfTopic topic(
      Document markup, String path, Map<String, byte[]> entries, BcfVersion version) {
    Element root = markup.getDocumentElement();
    Element topic =
        Xml.child(root, "Topic")
            .orElseThrow(
                () ->
                    new InputException(
                        Place.NOWHERE.inFile(path),
                        "the markup has no topic",
                        "Have the program that wrote it export it again."));
    List<BcfTopic.Comment> comments =
        (version.isOld() ? Xml.children(root, "Comment") : nested(topic, "Comments", "Comment"))
            .stream().map(BcfReader::comment).toList();
    String folder = path.substring(0, path.lastIndexOf('/') + 1);
    return new BcfTopic(
        topic.getAttribute("Guid"),
        Xml.text(topic, "Title"),
        topic.getAttribute("TopicType"),
        topic.getAttribute("TopicStatus"),
        Optional.of(Xml.text(topic, "AssignedTo")).filter(t -> !t.isEmpty()),
        comments,
        selection(root, topic, folder, entries, version));
  }

  static List<Element> nested(Element parent, String outer, String inner) {
    return Xml.child(parent, outer).map(e -> Xml.children(e, inner)).orElse(List.of());
  }

  private static BcfTopic.Comment comment(Element e) {
    return new BcfTopic.Comment(
        e.getAttribute("Guid"), Xml.text(e, "Date"), Xml.text(e, "Author"), Xml.text(e, "Comment"));
  }

  private static List<String> selection(
      Element root, Element topic, String folder, Map<String, byte[]> entries, BcfVersion version) {
    List<Element> views =
        version.isOld()
            ? Xml.children(root, "Viewpoints")
            : nested(topic, "Viewpoints", "ViewPoint");
    List<String> ids = new ArrayList<>();
    for (Element view : views) {
      byte[] file = entries.get(folder + Xml.text(view, "Viewpoint"));
      if (file != null) {
        Element info = HardXml.read(file, folder).getDocumentElement();
        Xml.child(info, "Components").stream()
            .flatMap(c -> nested(c, "Selection", "Component").stream())
            .forEach(c -> ids.add(c.getAttribute("IfcGuid")));
      }
    }
    return ids;
  }
}

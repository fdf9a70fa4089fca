package org.underlee.report.bcf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Small steps on an XML tree. */
final class Xml {
  private Xml() {}

  static List<Element> children(Element parent, String name) {
    List<Element> found = new ArrayList<>();
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element e && e.getTagName().equals(name)) {
        found.add(e);
      }
    }
    return found;
  }

  static Optional<Element> child(Element parent, String name) {
    return children(parent, name).stream().findFirst();
  }

  /** The text of a child, or empty. */
  static String text(Element parent, String name) {
    return child(parent, name).map(e -> e.getTextContent().strip()).orElse("");
  }

  static Element add(Node parent, String name) {
    Document document = parent instanceof Document d ? d : parent.getOwnerDocument();
    Element e = document.createElement(name);
    parent.appendChild(e);
    return e;
  }

  static Element add(Node parent, String name, String text) {
    Element e = add(parent, name);
    e.setTextContent(legal(text));
    return e;
  }

  /** Replaces the text of a child that is there. */
  static void set(Element parent, String name, String text) {
    child(parent, name).ifPresent(e -> e.setTextContent(legal(text)));
  }

  /** To nine places of a metre or of a direction: below what any model is drawn to. */
  static void number(Node parent, String name, double value) {
    double plain = value == 0 ? 0 : value; // no −0
    add(parent, name, String.format(Locale.ROOT, "%.9f", plain));
  }

  /** Without the characters that XML 1.0 has no way to write. */
  private static String legal(String text) {
    StringBuilder legal = new StringBuilder();
    text.codePoints()
        .filter(
            c ->
                c == '\t'
                    || c == '\n'
                    || c == '\r'
                    || (c >= 0x20 && c <= 0xD7FF)
                    || (c >= 0xE000 && c <= 0xFFFD)
                    || c >= 0x10000)
        .forEach(legal::appendCodePoint);
    return legal.toString();
  }
}

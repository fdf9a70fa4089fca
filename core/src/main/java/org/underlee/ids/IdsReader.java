package org.underlee.ids;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.ids.Specification.Cardinality;
import org.underlee.ids.Specification.Requirement;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Reads IDS 1.0 files. XML with a document type is refused, since it could read other files. */
final class IdsReader {
  private static final String ADVICE =
      "Give a file of the Information Delivery Specification 1.0 (.ids).";

  private final String name;

  private IdsReader(String name) {
    this.name = name;
  }

  static List<Specification> read(Path file) {
    String called = String.valueOf(file.getFileName());
    try {
      return read(Files.readAllBytes(file), called);
    } catch (IOException e) {
      throw new InputException(Place.NOWHERE.inFile(called), "the IDS file cannot be read", ADVICE);
    }
  }

  static List<Specification> read(byte[] xml, String called) {
    IdsReader reader = new IdsReader(called);
    Element root = reader.root(xml);
    if (!"ids".equals(root.getLocalName())) {
      throw reader.slip("its root is " + root.getNodeName() + ", not ids");
    }
    List<Specification> all = new ArrayList<>();
    for (Element specifications : children(root, "specifications")) {
      for (Element each : children(specifications, "specification")) {
        all.add(reader.specification(each));
      }
    }
    if (all.isEmpty()) {
      throw reader.slip("it has no specification");
    }
    return List.copyOf(all);
  }

  private Element root(byte[] xml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      var builder = factory.newDocumentBuilder();
      builder.setErrorHandler(new Quiet());
      return builder.parse(new ByteArrayInputStream(xml)).getDocumentElement();
    } catch (SAXException | IOException | ParserConfigurationException e) {
      throw slip("it is no XML of this kind: " + e.getMessage());
    }
  }

  private InputException slip(String what) {
    return new InputException(
        Place.NOWHERE.inFile(name), "the IDS file cannot be used: " + what, ADVICE);
  }

  private Specification specification(Element e) {
    String called = e.getAttribute("name");
    Element applicability =
        child(e, "applicability").orElseThrow(() -> slip(called + " has no applicability"));
    int least = occurs(applicability, "minOccurs");
    int most = occurs(applicability, "maxOccurs");
    List<Facet> facets = new ArrayList<>();
    elements(applicability).forEach(f -> facets.add(facet(f)));
    List<Requirement> requirements = new ArrayList<>();
    for (Element all : children(e, "requirements")) {
      elements(all).forEach(f -> requirements.add(new Requirement(facet(f), cardinality(f))));
    }
    if (most == 0 && !requirements.isEmpty()) {
      throw slip(called + " prohibits what it is about, and yet has requirements");
    }
    List<String> versions = List.of(e.getAttribute("ifcVersion").strip().split("\\s+"));
    return new Specification(called, versions, facets, least, most, requirements);
  }

  private int occurs(Element e, String attribute) {
    String text = e.getAttribute(attribute);
    if (text.equals("unbounded")) {
      return Integer.MAX_VALUE;
    }
    if (text.isEmpty()) {
      return 1;
    }
    if (!text.matches("\\d{1,9}")) {
      throw slip(attribute + " is \"" + text + "\"");
    }
    return Integer.parseInt(text);
  }

  private Cardinality cardinality(Element e) {
    String text = e.getAttribute("cardinality");
    return switch (text) {
      case "", "required" -> Cardinality.REQUIRED;
      case "optional" -> Cardinality.OPTIONAL;
      case "prohibited" -> Cardinality.PROHIBITED;
      default -> throw slip("a cardinality is \"" + text + "\"");
    };
  }

  private Facet facet(Element e) {
    return switch (String.valueOf(e.getLocalName())) {
      case "entity" -> entity(e);
      case "attribute" -> new Facet.Attribute(needed(e, "name"), value(e, "value"));
      case "property" ->
          new Facet.Property(
              needed(e, "propertySet"),
              needed(e, "baseName"),
              value(e, "value"),
              text(e, "dataType"));
      case "classification" -> new Facet.Classification(needed(e, "system"), value(e, "value"));
      case "material" -> new Facet.Material(value(e, "value"));
      case "partOf" ->
          new Facet.PartOf(
              entity(child(e, "entity").orElseThrow(() -> slip("a partOf has no entity"))),
              text(e, "relation"));
      default -> throw slip("there is no facet " + e.getNodeName());
    };
  }

  private static Optional<String> text(Element e, String attribute) {
    return Optional.of(e.getAttribute(attribute)).filter(t -> !t.isEmpty());
  }

  private Facet.Entity entity(Element e) {
    return new Facet.Entity(needed(e, "name"), value(e, "predefinedType"));
  }

  private IdsValue needed(Element e, String part) {
    return value(e, part).orElseThrow(() -> slip("a " + e.getNodeName() + " has no " + part));
  }

  private Optional<IdsValue> value(Element e, String part) {
    return child(e, part).map(this::value);
  }

  private IdsValue value(Element e) {
    Optional<Element> simple = child(e, "simpleValue");
    if (simple.isPresent()) {
      return IdsValue.simple(simple.get().getTextContent());
    }
    Element restriction =
        child(e, "restriction").orElseThrow(() -> slip(e.getNodeName() + " has no value"));
    List<String> options = new ArrayList<>();
    List<Pattern> patterns = new ArrayList<>();
    Map<String, Double> bounds = new HashMap<>();
    for (Element part : elements(restriction)) {
      String given = part.getAttribute("value");
      switch (String.valueOf(part.getLocalName())) {
        case "enumeration" -> options.add(given);
        case "pattern" -> patterns.add(IdsValue.pattern(given));
        case "annotation" -> {}
        default -> bounds.put(String.valueOf(part.getLocalName()), number(given));
      }
    }
    return new IdsValue(options, patterns, bounds);
  }

  private double number(String text) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException e) {
      throw slip(String.format(Locale.ROOT, "a bound is \"%s\", which is no number", text));
    }
  }

  private static Optional<Element> child(Element e, String called) {
    return children(e, called).stream().findFirst();
  }

  private static List<Element> children(Element e, String called) {
    return elements(e).stream().filter(c -> called.equals(c.getLocalName())).toList();
  }

  private static List<Element> elements(Element e) {
    List<Element> all = new ArrayList<>();
    NodeList nodes = e.getChildNodes();
    for (int i = 0; i < nodes.getLength(); i++) {
      Node node = nodes.item(i);
      if (node instanceof Element child) {
        all.add(child);
      }
    }
    return all;
  }

  /** Says nothing: what is wrong comes as an exception. */
  private static final class Quiet extends org.xml.sax.helpers.DefaultHandler {
    @Override
    public void fatalError(org.xml.sax.SAXParseException e) throws SAXException {
      throw e;
    }
  }
}

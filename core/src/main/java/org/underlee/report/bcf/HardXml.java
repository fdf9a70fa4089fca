package org.underlee.report.bcf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.w3c.dom.Document;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Reads XML that strangers wrote: no document type, so no entities and nothing from elsewhere; not
 * deeper than 64 elements.
 */
final class HardXml {
  private static final int DEEPEST = 64;
  private static final String NO_DOCTYPE = "http://apache.org/xml/features/disallow-doctype-decl";
  private static final String ADVICE =
      "Have the program that wrote it export it again, or choose another file.";

  private HardXml() {}

  /** Refuses what is too deep, before a tree of it is built. */
  private static final class Depth extends DefaultHandler {
    private int depth;

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes)
        throws SAXException {
      if (++depth > DEEPEST) {
        throw new SAXException("elements lie more than " + DEEPEST + " deep in each other");
      }
    }

    @Override
    public void endElement(String uri, String name, String qualified) {
      depth--;
    }

    @Override
    public void error(SAXParseException e) throws SAXException {
      throw e;
    }
  }

  /**
   * The tree of a document.
   *
   * @param name of the entry, for messages
   * @throws InputException when it is refused or broken
   */
  static Document read(byte[] xml, String name) {
    try {
      SAXParserFactory scanner = SAXParserFactory.newInstance();
      scanner.setFeature(NO_DOCTYPE, true);
      scanner.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      scanner.newSAXParser().parse(new ByteArrayInputStream(xml), new Depth());
      return builder().parse(new ByteArrayInputStream(xml));
    } catch (SAXException e) {
      throw new InputException(
          Place.NOWHERE.inFile(name), "the XML is refused: " + e.getMessage(), ADVICE);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("every Java has an XML parser", e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Document empty() {
    try {
      return builder().newDocument();
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("every Java has an XML parser", e);
    }
  }

  private static DocumentBuilder builder() throws ParserConfigurationException {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature(NO_DOCTYPE, true);
    factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    factory.setXIncludeAware(false);
    factory.setExpandEntityReferences(false);
    DocumentBuilder builder = factory.newDocumentBuilder();
    builder.setErrorHandler(new Depth());
    return builder;
  }

  static byte[] write(Document document) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      TransformerFactory factory = TransformerFactory.newInstance();
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      Transformer transformer = factory.newTransformer();
      transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
      document.setXmlStandalone(true);
      transformer.transform(new DOMSource(document), new StreamResult(out));
    } catch (TransformerException e) {
      throw new IllegalStateException("an XML tree cannot be written", e);
    }
    return out.toByteArray();
  }
}

package org.underlee.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * The documentation as pages that a browser opens from the disk: {@code java … DocsSite . site}.
 * Each Markdown page of the project becomes one HTML page at the same place, with the same links;
 * pictures and sample files go along.
 */
final class DocsSite {
  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), HeadingAnchorExtension.create());
  private static final Parser PARSER = Parser.builder().extensions(EXTENSIONS).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder().extensions(EXTENSIONS).build();

  private static final List<String> PLACES = List.of("docs", "samples");
  private static final List<String> PAGES = List.of("README.md", "DEVELOPERS.md");
  private static final List<String> ALONG = List.of("LICENSE", "NOTICE");

  private static final String STYLE =
      """
      :root { color-scheme: light dark; --line: color-mix(in srgb, CanvasText 20%, Canvas) }
      body { font: 1rem/1.55 system-ui, sans-serif; max-width: 62rem; margin: 0 auto; padding: 1rem 1.5rem 4rem }
      nav { border-bottom: 1px solid var(--line); padding-bottom: .6rem; margin-bottom: 1.5rem }
      nav a { margin-right: 1.2rem }
      h1, h2, h3 { line-height: 1.2; margin-top: 2rem }
      img { max-width: 100%; height: auto }
      pre { overflow-x: auto; padding: .8rem 1rem; border: 1px solid var(--line); border-radius: .3rem; line-height: 1.35 }
      code { font-size: .92em }
      .wide { overflow-x: auto }
      table { border-collapse: collapse }
      th, td { border: 1px solid var(--line); padding: .3rem .6rem; text-align: left; vertical-align: top }
      @media print { nav { display: none } }
      """;

  private DocsSite() {}

  /** Writes the pages of the project at the first path below the second. */
  public static void main(String[] args) throws IOException {
    write(Path.of(args[0]), Path.of(args[1]));
  }

  static void write(Path root, Path site) throws IOException {
    for (String page : PAGES) {
      page(root, root.resolve(page), site);
    }
    for (String file : ALONG) {
      copy(root, root.resolve(file), site);
    }
    for (String place : PLACES) {
      try (Stream<Path> tree = Files.walk(root.resolve(place))) {
        for (Path file : tree.filter(Files::isRegularFile).filter(DocsSite::isShown).toList()) {
          if (file.toString().endsWith(".md")) {
            page(root, file, site);
          } else {
            copy(root, file, site);
          }
        }
      }
    }
  }

  /** What a reader may look at; no sources and no build. */
  private static boolean isShown(Path file) {
    String path = file.toString().replace('\\', '/');
    return !path.contains("/src/") && !path.contains("/target/") && !path.endsWith("pom.xml");
  }

  private static void page(Path root, Path file, Path site) throws IOException {
    Node document = PARSER.parse(Files.readString(file));
    ToPages links = new ToPages();
    document.accept(links);
    for (String other : links.others) {
      copy(root, file.resolveSibling(other).normalize(), site);
    }
    Path below = root.relativize(file);
    Path target = site.resolve(html(below.toString()));
    String top = "../".repeat(below.getNameCount() - 1);
    Files.createDirectories(target.getParent());
    Files.writeString(target, page(title(document), top, RENDERER.render(document)));
  }

  private static String page(String title, String top, String body) {
    return "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width\">\n<title>"
        + title
        + "</title>\n<style>\n"
        + STYLE
        + "</style></head>\n<body>\n<nav aria-label=\"Site\"><a href=\""
        + top
        + "README.html\">Underlee</a><a href=\""
        + top
        + "docs/README.html\">Documentation</a><a href=\""
        + top
        + "samples/README.html\">Samples</a></nav>\n<main>\n"
        + body.replace("<table>", "<div class=\"wide\"><table>")
            .replace("</table>", "</table></div>")
        + "</main>\n</body></html>\n";
  }

  private static void copy(Path root, Path file, Path site) throws IOException {
    Path target = site.resolve(root.relativize(file).toString());
    Files.createDirectories(target.getParent());
    Files.copy(file, target, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String html(String page) {
    return page.replaceFirst("\\.md(?=$|#)", ".html");
  }

  private static String title(Node document) {
    StringBuilder title = new StringBuilder();
    document.accept(
        new AbstractVisitor() {
          private boolean found;

          @Override
          public void visit(Heading heading) {
            if (!found) {
              found = true;
              visitChildren(heading);
            }
          }

          @Override
          public void visit(Text text) {
            if (text.getParent() instanceof Heading && title.isEmpty()) {
              title.append(text.getLiteral());
            }
          }
        });
    return title.toString();
  }

  /**
   * Links between Markdown pages become links between the pages made from them; what else they lead
   * to goes along.
   */
  private static final class ToPages extends AbstractVisitor {
    private final List<String> others = new ArrayList<>();

    @Override
    public void visit(Link link) {
      String target = link.getDestination();
      if (!target.contains("://")) {
        link.setDestination(html(target));
        boolean file = !target.isEmpty() && !target.contains("#") && !target.endsWith("/");
        if (file && !target.endsWith(".md")) {
          others.add(target);
        }
      }
      visitChildren(link);
    }
  }
}

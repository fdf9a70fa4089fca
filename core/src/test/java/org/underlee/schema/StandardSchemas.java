package org.underlee.schema;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The standard's own schema files, out of the library that carries them for tests. */
public final class StandardSchemas {
  private static final Map<String, Schema> READ = new ConcurrentHashMap<>();

  private StandardSchemas() {}

  /** The schema that a model names. */
  public static Schema of(String name) {
    String file =
        name.startsWith("IFC2X3")
            ? "IFC2X3_TC1.exp"
            : name.startsWith("IFC4X3") ? "IFC4X3_ADD2.exp" : "IFC4_ADD2.exp";
    return READ.computeIfAbsent(file, f -> Schema.parse(text(f), f));
  }

  /** The text of one of the files. */
  public static String text(String file) {
    try (InputStream in = StandardSchemas.class.getResourceAsStream("/schema/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

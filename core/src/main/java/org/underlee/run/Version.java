package org.underlee.run;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The program's own version and what it was built from, as the build writes them. */
public final class Version {
  private Version() {}

  public static String number() {
    return read().getProperty("version");
  }

  /** The commit, and whether files differed from it; {@code unknown} where there was no history. */
  public static String builtFrom() {
    Properties facts = read();
    boolean changed = Boolean.parseBoolean(facts.getProperty("changed"));
    return facts.getProperty("commit") + (changed ? " with changes" : "");
  }

  private static Properties read() {
    Properties properties = new Properties();
    try (InputStream in = Version.class.getResourceAsStream("version.properties")) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties;
  }
}

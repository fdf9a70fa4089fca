package org.underlee.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.underlee.drainage.flow.CapacityData;
import org.underlee.finding.FileFault;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;
import org.underlee.layout.OwnTables;

/** Reads the user's own tables of capacities. */
public final class CapacityTables {
  private CapacityTables() {}

  /**
   * Those at a path, tried out.
   *
   * @throws InputException when they cannot be read or used
   */
  public static OwnTables at(Path path) {
    String name = path.getFileName().toString();
    try {
      OwnTables own = new OwnTables(name, Files.readString(path));
      CapacityData.builtIn().with(own.file(), own.text());
      return own;
    } catch (IOException e) {
      throw new InputException(
          Place.NOWHERE.inFile(name),
          "the table of capacities cannot be read: " + FileFault.words(e),
          "Check the path, the rights to the file, and that it is text in UTF-8.");
    }
  }

  /** What they are, in words. */
  public static String named(OwnTables own) {
    return CapacityData.builtIn().with(own.file(), own.text()).own().stream()
        .map(CapacityData.Table::name)
        .collect(Collectors.joining("; "));
  }
}

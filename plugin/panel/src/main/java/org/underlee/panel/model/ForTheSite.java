package org.underlee.panel.model;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.beans.value.ObservableValue;
import org.underlee.finding.StopSign;
import org.underlee.report.ChecklistText;
import org.underlee.report.packet.PacketBuilder;
import org.underlee.report.packet.PacketFiles;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Writing;
import org.underlee.run.Design;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.writeback.FilesRead;
import org.underlee.writeback.SafeSave;

/** What goes to the site: the packet, in a folder, and the questions that wait there. */
public final class ForTheSite {
  private final Session session;
  private final Saving saving;
  private final ObservableValue<UnitSystem> units;

  ForTheSite(Session session, Saving saving, ObservableValue<UnitSystem> units) {
    this.session = session;
    this.saving = saving;
    this.units = units;
  }

  /** Whether there is a whole design with something laid out. */
  public boolean canExport() {
    return design().isPresent();
  }

  private Optional<Design> design() {
    return session
        .result()
        .get()
        .filter(Result::isWhole)
        .flatMap(Result::design)
        .filter(d -> !d.layout().fields().isEmpty());
  }

  /**
   * Languages that a packet can be in, as {@code packet --lang} takes them; the usual one first.
   */
  public List<String> languages() {
    return Writing.LANGUAGES;
  }

  /** {@code Spanish}. */
  public String words(String language) {
    return Locale.forLanguageTag(language).getDisplayLanguage(Locale.ENGLISH);
  }

  /** Writes the packet into a folder, each file whole or not at all. */
  public void exportPacket(Path folder, String language) {
    UnitSystem system = units.getValue();
    FilesRead read = session.filesRead();
    design()
        .ifPresent(
            d ->
                saving.run(
                    "Making the packet",
                    () -> {
                      Paper paper = system == UnitSystem.METRIC ? Paper.A4 : Paper.LETTER;
                      Writing writing = new Writing(system, language);
                      return save(
                          PacketFiles.of(PacketBuilder.of(d, writing), paper), folder, read);
                    }));
  }

  /** All are looked at before the first is written. */
  private static String save(Map<String, byte[]> files, Path folder, FilesRead read)
      throws IOException {
    files.keySet().forEach(name -> read.requireApart(folder.resolve(name)));
    long replaced = files.keySet().stream().filter(n -> Files.exists(folder.resolve(n))).count();
    StopSign stop = StopSign.here();
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      stop.obey();
      Path target = folder.resolve(file.getKey());
      Files.createDirectories(target.resolveSibling(""));
      new SafeSave().plain(target, target, true, file.getValue());
    }
    return "Wrote "
        + files.size()
        + " files to "
        + folder
        + (replaced == 0 ? "" : ", " + replaced + " in place of files that were there")
        + "; begin with packet.pdf.";
  }

  /** Writes what only someone on site can answer, to tick off. */
  public void exportChecklist(Path target) {
    design()
        .ifPresent(
            d ->
                saving.save(
                    target,
                    FileKind.TEXTS,
                    () -> new SafeSave().plain(target, target, true, checklist(d))));
  }

  private static byte[] checklist(Design design) {
    return ChecklistText.write(design.checks().questions())
        .stripLeading()
        .getBytes(StandardCharsets.UTF_8);
  }
}

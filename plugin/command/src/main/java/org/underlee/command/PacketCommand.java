package org.underlee.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.underlee.report.packet.Packet;
import org.underlee.report.packet.PacketBuilder;
import org.underlee.report.packet.PacketFiles;
import org.underlee.report.packet.Paper;
import org.underlee.report.packet.Writing;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.Survey;
import org.underlee.units.Lengths.UnitSystem;
import org.underlee.writeback.SafeSave;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

@Command(
    name = "packet",
    description =
        "Makes what goes to the site: a PDF for the crew, a page for the phone, drawings.",
    mixinStandardHelpOptions = true)
final class PacketCommand implements Callable<Integer> {
  @Mixin ModelOptions model = new ModelOptions();

  @Option(
      names = "--out",
      paramLabel = "FOLDER",
      required = true,
      description = "The folder to write to; made when it is not there.")
  Path out = Path.of("");

  @Mixin KitOption kit = new KitOption();

  @Mixin WishOptions wishes = new WishOptions();

  @Mixin RainOption rain = new RainOption();

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      description =
          "${COMPLETION-CANDIDATES}; LETTER for imperial and A4 for metric units when not given.")
  java.util.Optional<Paper> paper = java.util.Optional.empty();

  @Option(
      names = "--lang",
      paramLabel = "LANGUAGE",
      description = "Language of the packet: en or es; en when not given.")
  String language = Locale.ENGLISH.getLanguage();

  @Override
  public Integer call() {
    if (!Writing.LANGUAGES.contains(language)) {
      throw new ParameterException(
          model.spec.commandLine(),
          "--lang " + language + ": choose one of " + String.join(", ", Writing.LANGUAGES));
    }
    Survey survey = model.survey();
    Design design =
        DeckRun.design(survey, wishes.of(model.scope(), survey), kit.kit(), rain.storm());
    UnitSystem units = model.unitsFor(design.survey());
    if (design.layout().fields().isEmpty()) {
      model.say("Nothing was laid out; there is nothing to take to the site.");
      return model.report(design.findings(), units);
    }
    Packet packet = PacketBuilder.of(design, new Writing(units, language));
    Paper sheet = paper.orElse(units == UnitSystem.METRIC ? Paper.A4 : Paper.LETTER);
    Map<String, byte[]> files = PacketFiles.of(packet, sheet);
    files.keySet().forEach(name -> model.files().requireNotRead(out.resolve(name)));
    long replaced = files.keySet().stream().filter(name -> Files.exists(out.resolve(name))).count();
    files.forEach(this::save);
    model.say(
        "Wrote "
            + files.size()
            + " files to "
            + out
            + (replaced == 0 ? "" : ", " + replaced + " in place of files that were there")
            + "; begin with packet.pdf.");
    return model.report(design.findings(), units);
  }

  private void save(String name, byte[] bytes) {
    Path target = out.resolve(name);
    try {
      Files.createDirectories(target.toAbsolutePath().getParent());
    } catch (IOException e) {
      // The save below fails for the same reason, and says what could not be written.
      model.say("The folder of " + target + " could not be made.");
    }
    new SafeSave().plain(model.file, target, false, bytes);
  }
}

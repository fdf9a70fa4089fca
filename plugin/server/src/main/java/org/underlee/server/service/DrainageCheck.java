package org.underlee.server.service;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.bimserver.emf.IfcModelInterface;
import org.bimserver.emf.Schema;
import org.bimserver.models.store.ModelCheckerResult;
import org.bimserver.models.store.ModelCheckerResultLine;
import org.bimserver.models.store.ModelCheckerResultType;
import org.bimserver.models.store.ObjectDefinition;
import org.bimserver.models.store.StoreFactory;
import org.bimserver.plugins.PluginConfiguration;
import org.bimserver.plugins.PluginContext;
import org.bimserver.plugins.modelchecker.ModelCheckException;
import org.bimserver.plugins.modelchecker.ModelChecker;
import org.bimserver.plugins.modelchecker.ModelCheckerPlugin;
import org.bimserver.plugins.serializers.ProgressReporter;
import org.bimserver.plugins.serializers.ProjectInfo;
import org.bimserver.plugins.serializers.Serializer;
import org.bimserver.plugins.serializers.SerializerException;
import org.jspecify.annotations.Nullable;
import org.underlee.finding.Finding;
import org.underlee.finding.InputException;
import org.underlee.finding.Level;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.run.SurveyRequest;
import org.underlee.writeback.Strip;

/**
 * A check that the server runs on a model before it sets a service to work: a model passes when the
 * assembly in it drains, or, where it has none, when one can be laid out; and when no finding about
 * it is an error. The check's compiled code is the text of the same settings that a service's
 * description holds.
 */
public final class DrainageCheck implements ModelCheckerPlugin {
  /** The server's own writers, by the names of their classes. */
  private static final String WRITERS = "org.bimserver.ifc.step.serializer.";

  private Optional<PluginContext> context = Optional.empty();

  @Override
  public void init(PluginContext given, PluginConfiguration settings) {
    context = Optional.of(given);
  }

  @Override
  public @Nullable ObjectDefinition getUserSettingsDefinition() {
    return null;
  }

  @Override
  public @Nullable ObjectDefinition getSystemSettingsDefinition() {
    return null;
  }

  @Override
  public ModelChecker createModelChecker(@Nullable PluginConfiguration settings) {
    return (model, compiled) -> judged(text(model), parsed(compiled));
  }

  private static Settings parsed(byte @Nullable [] compiled) throws ModelCheckException {
    try {
      return Settings.parse(compiled == null ? "" : new String(compiled, StandardCharsets.UTF_8));
    } catch (IllegalArgumentException | InputException e) {
      throw failed(e);
    }
  }

  /** The model as IFC text, which is what the program reads. */
  private byte[] text(IfcModelInterface model) throws ModelCheckException {
    boolean ifc4 = model.getPackageMetaData().getSchema() == Schema.IFC4;
    String writer = WRITERS + (ifc4 ? "Ifc4" : "Ifc2x3tc1") + "StepSerializerPlugin";
    try {
      Serializer serializer =
          context
              .orElseThrow()
              .getSerializerPlugin(writer)
              .createSerializer(new PluginConfiguration());
      serializer.init(model, new ProjectInfo(), true);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      serializer.writeToOutputStream(out, new Unwatched());
      return out.toByteArray();
    } catch (SerializerException e) {
      throw failed(e);
    }
  }

  private static ModelCheckerResult judged(byte[] model, Settings settings) {
    ModelCheckerResult result = StoreFactory.eINSTANCE.createModelCheckerResult();
    try {
      List<Finding> findings = findings(model, settings, result);
      findings.stream()
          .filter(f -> f.level() == Level.ERROR)
          .forEach(f -> add(result, f.rule().id(), f.message(), f.fix().map(Told::words)));
    } catch (InputException e) {
      add(result, "model", String.valueOf(e.getMessage()), Optional.of(e.advice()));
    }
    result.setValid(result.getItems().isEmpty());
    return result;
  }

  private static List<Finding> findings(
      byte[] model, Settings settings, ModelCheckerResult result) {
    if (Strip.holdsUnmarked(model)) {
      return DeckRun.check(model, "model.ifc", SurveyRequest.PLAIN, settings.scope().deck())
          .findings();
    }
    Design design =
        DeckRun.design(
            DeckRun.survey(model, "model.ifc"), settings.scope(), settings.kit(), settings.storm());
    if (design.layout().parts().isEmpty()) {
      add(result, "deck", "there is nothing to lay out", Optional.of("a deck with its joists"));
    }
    return design.findings();
  }

  private static void add(
      ModelCheckerResult result, String what, String found, Optional<String> wanted) {
    ModelCheckerResultLine line = StoreFactory.eINSTANCE.createModelCheckerResultLine();
    line.setFieldOrClass(what);
    line.setValue(found);
    wanted.ifPresent(line::setShouldBe);
    line.setType(ModelCheckerResultType.ERROR);
    result.getItems().add(line);
  }

  private static ModelCheckException failed(Exception e) {
    return new ModelCheckException(String.valueOf(e.getMessage()));
  }

  /** Nobody watches how far the writing is. */
  private static final class Unwatched implements ProgressReporter {
    @Override
    public void update(long done, long all) {}

    @Override
    public void setTitle(@Nullable String title) {}
  }
}

package org.underlee.server.service;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bimserver.interfaces.objects.SExtendedData;
import org.bimserver.interfaces.objects.SFile;
import org.bimserver.interfaces.objects.SObjectType;
import org.bimserver.interfaces.objects.SProject;
import org.bimserver.interfaces.objects.SRevision;
import org.bimserver.models.store.ServiceDescriptor;
import org.bimserver.plugins.services.AbstractService;
import org.bimserver.plugins.services.BimServerClientInterface;
import org.bimserver.shared.interfaces.ServiceInterface;
import org.underlee.report.DesignText;
import org.underlee.report.TakeoffCsv;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.server.Comments;
import org.underlee.units.Lengths.UnitSystem;

/**
 * Lays out the drainage of each new revision of a project and adds the result as a revision of its
 * own, with a report beside the one that came. It never answers a revision of ours. A failure
 * changes nothing in the project, and is shown as a report and in the server's list of work.
 */
public final class DrainageService extends AbstractService {
  /** The server's own name for plain text beside a revision. */
  static final String REPORT_SCHEMA = "UNSTRUCTURED_UTF8_TEXT_1_0";

  @Override
  public void addRequiredRights(ServiceDescriptor descriptor) {
    descriptor.setWriteRevision(true);
    descriptor.setWriteExtendedData(REPORT_SCHEMA);
  }

  @Override
  public void newRevision(
      RunningService running,
      BimServerClientInterface client,
      long project,
      long revision,
      String token,
      long service,
      SObjectType settings)
      throws Exception {
    ServiceInterface server = client.getServiceInterface();
    SRevision came = server.getRevision(revision);
    if (Comments.isOurs(came.getComment() == null ? "" : came.getComment())) {
      return;
    }
    try {
      String description = server.getService(service).getDescription();
      work(client, came, Settings.parse(description == null ? "" : description));
    } catch (RuntimeException e) {
      report(client, revision, "Underlee could not work", String.valueOf(e.getMessage()));
      throw e;
    }
  }

  private static void work(BimServerClientInterface client, SRevision came, Settings settings)
      throws Exception {
    SProject project = client.getServiceInterface().getProjectByPoid(came.getProjectId());
    Design design =
        DeckRun.design(
            DeckRun.survey(download(client, project, came), project.getName() + ".ifc"),
            settings.scope(),
            settings.kit(),
            settings.storm());
    String text =
        DesignText.write(design, UnitSystem.METRIC) + "\n" + TakeoffCsv.write(design.takeoff());
    report(client, came.getOid(), "Underlee: drainage", text);
    if (!settings.report() && !design.layout().parts().isEmpty()) {
      checkIn(client, project, came, design);
    }
  }

  private static byte[] download(
      BimServerClientInterface client, SProject project, SRevision revision) throws Exception {
    String writer =
        project.getSchema().equalsIgnoreCase("ifc4") ? "Ifc4 (Streaming)" : "Ifc2x3tc1 (Streaming)";
    ByteArrayOutputStream model = new ByteArrayOutputStream();
    client.download(
        revision.getOid(),
        client.getServiceInterface().getSerializerByName(writer).getOid(),
        model);
    return model.toByteArray();
  }

  private static void checkIn(
      BimServerClientInterface client, SProject project, SRevision came, Design design)
      throws Exception {
    ServiceInterface server = client.getServiceInterface();
    if (server.getProjectByPoid(project.getOid()).getLastRevisionId() != came.getOid()) {
      return; // A newer one has come, and is answered itself.
    }
    Path file = Files.createTempFile("underlee", ".ifc");
    try {
      Files.write(file, design.written().bytes());
      client.checkinSync(
          project.getOid(),
          Comments.ofAssembly(design.layout().parts().size(), came.getId()),
          server.getSuggestedDeserializerForExtension("ifc", project.getOid()).getOid(),
          false,
          file);
    } finally {
      Files.delete(file);
    }
  }

  private static void report(
      BimServerClientInterface client, long revision, String title, String text) throws Exception {
    ServiceInterface server = client.getServiceInterface();
    byte[] data = text.getBytes(StandardCharsets.UTF_8);
    SFile file = new SFile();
    file.setFilename("underlee.txt");
    file.setMime("text/plain");
    file.setData(data);
    file.setSize(data.length);
    SExtendedData beside = new SExtendedData();
    beside.setTitle(title);
    beside.setSize(data.length);
    beside.setSchemaId(server.getExtendedDataSchemaByName(REPORT_SCHEMA).getOid());
    beside.setFileId(server.uploadFile(file));
    server.addExtendedDataToRevision(revision, beside);
  }
}

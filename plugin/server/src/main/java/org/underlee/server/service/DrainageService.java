package org.underlee.server.service;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.bimserver.interfaces.objects.SObjectType;
import org.bimserver.interfaces.objects.SProject;
import org.bimserver.interfaces.objects.SRevision;
import org.bimserver.models.store.ServiceDescriptor;
import org.bimserver.plugins.services.AbstractService;
import org.bimserver.plugins.services.BimServerClientInterface;
import org.bimserver.shared.interfaces.ServiceInterface;
import org.underlee.report.TakeoffCsv;
import org.underlee.run.DeckRun;
import org.underlee.run.Design;
import org.underlee.server.Comments;

/**
 * Lays out the drainage of each new revision of a project and adds the result as a revision of its
 * own, with reports beside the one that came. It never answers a revision of ours. A failure
 * changes nothing in the project, and is shown as a report and in the server's list of work.
 */
public final class DrainageService extends AbstractService {
  @Override
  public void addRequiredRights(ServiceDescriptor descriptor) {
    descriptor.setWriteRevision(true);
    descriptor.setWriteExtendedData(Reports.Form.TEXT.schema());
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
    if (Comments.isOurs(text(came.getComment()))) {
      return;
    }
    try {
      String description = text(server.getService(service).getDescription());
      work(client, came, Settings.parse(description));
    } catch (Exception e) {
      new Reports(server, revision)
          .add(Reports.Form.TEXT, "Underlee could not work", String.valueOf(e.getMessage()));
      throw e;
    }
  }

  private static String text(String given) {
    return Optional.ofNullable(given).orElse("");
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
    boolean something = !design.layout().parts().isEmpty();
    report(new Reports(client.getServiceInterface(), came.getOid()), design, something);
    if (!settings.report() && something) {
      checkIn(client, project, came, design);
    }
  }

  private static void report(Reports beside, Design design, boolean something) throws Exception {
    beside.add(Reports.Form.TEXT, "Underlee: drainage", Told.text(design));
    if (something) {
      String bill = TakeoffCsv.write(design);
      beside.add(Reports.Form.TABLE, "Underlee: what to buy and cut", bill);
      beside.add(Reports.Form.ISSUES, "Underlee: what is in the way", Told.issues(design));
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
}

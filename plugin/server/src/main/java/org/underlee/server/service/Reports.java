package org.underlee.server.service;

import java.nio.charset.StandardCharsets;
import org.bimserver.interfaces.objects.SExtendedData;
import org.bimserver.interfaces.objects.SExtendedDataSchema;
import org.bimserver.interfaces.objects.SFile;
import org.bimserver.shared.exceptions.ServerException;
import org.bimserver.shared.exceptions.UserException;
import org.bimserver.shared.interfaces.ServiceInterface;

/** What is laid beside a revision: the server calls it extended data. */
final class Reports {
  /** A form that the server knows by a name of its own. */
  enum Form {
    TEXT("UNSTRUCTURED_UTF8_TEXT_1_0", "text/plain", "underlee.txt"),
    TABLE("CSV_TABLE_1_0", "text/csv", "underlee-takeoff.csv"),
    ISSUES("BCF_ZIP_2_1", "application/zip", "underlee-issues.bcf");

    private final String schema;
    private final String type;
    private final String file;

    Form(String schema, String type, String file) {
      this.schema = schema;
      this.type = type;
      this.file = file;
    }

    String schema() {
      return schema;
    }
  }

  private final ServiceInterface server;
  private final long revision;

  Reports(ServiceInterface server, long revision) {
    this.server = server;
    this.revision = revision;
  }

  void add(Form form, String title, String text) throws ServerException, UserException {
    add(form, title, text.getBytes(StandardCharsets.UTF_8));
  }

  void add(Form form, String title, byte[] data) throws ServerException, UserException {
    SFile file = new SFile();
    file.setFilename(form.file);
    file.setMime(form.type);
    file.setData(data);
    file.setSize(data.length);
    SExtendedData beside = new SExtendedData();
    beside.setTitle(title);
    beside.setSize(data.length);
    beside.setSchemaId(schema(form));
    beside.setFileId(server.uploadFile(file));
    server.addExtendedDataToRevision(revision, beside);
  }

  /** Its number on this server; a server that does not know the form is told of it. */
  private long schema(Form form) throws ServerException, UserException {
    for (SExtendedDataSchema known : server.getAllExtendedDataSchemas()) {
      if (form.schema.equals(known.getName())) {
        return known.getOid();
      }
    }
    SExtendedDataSchema schema = new SExtendedDataSchema();
    schema.setName(form.schema);
    schema.setContentType(form.type);
    server.addExtendedDataSchema(schema);
    return server.getExtendedDataSchemaByName(form.schema).getOid();
  }
}

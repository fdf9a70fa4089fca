package org.underlee.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.FileNotFoundException;
import java.net.URLEncoder;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpResponse.BodySubscribers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** Whole models over the wire. The token goes in the body, never in an address that is logged. */
final class Transfer {
  private static final String END = "END-ISO-10303-21;";

  /** Parts the fields of a form; no model has a line of it. */
  private static final String BOUNDARY = "underlee-5e0c8b1f6a2d4937b3c1";

  private final Calls calls;

  Transfer(Calls calls) {
    this.calls = calls;
  }

  /**
   * The model that the server has ready under a topic.
   *
   * @throws ServerException when it does not come to its end
   */
  byte[] fetch(long topic, Progress progress) {
    Counted counted = new Counted();
    Wire wire = calls.wire();
    byte[] model =
        wire.sent(
            download(topic),
            info -> counted.in(BodySubscribers.ofByteArray()),
            counted,
            wire.limits().work(),
            progress);
    requireWhole(model);
    progress.bytes(model.length, model.length);
    return model;
  }

  private HttpRequest download(long topic) {
    String form =
        "token=" + URLEncoder.encode(calls.token(), StandardCharsets.UTF_8) + "&topicId=" + topic;
    return calls
        .wire()
        .to("/download")
        .header("Content-Type", "application/x-www-form-urlencoded")
        .POST(BodyPublishers.ofString(form))
        .build();
  }

  private void requireWhole(byte[] model) {
    // White space and a comment may follow the last word.
    int tail = Math.min(model.length, 4 * END.length());
    String end = new String(model, model.length - tail, tail, StandardCharsets.ISO_8859_1);
    if (!end.contains(END)) {
      throw new ServerException(
          calls.wire().base() + " sent a model that breaks off after " + model.length + " bytes.",
          "Try again; if it stays so, the server cannot write this revision.");
    }
  }

  /**
   * Sends a file, and waits until the server has read it as a model.
   *
   * @return the server's account of it
   */
  JsonNode send(Path file, long project, long reader, String comment, Progress progress) {
    Counted counted = new Counted();
    BodyPublisher body = form(file, project, reader, comment);
    counted.expect(body.contentLength());
    HttpRequest request =
        calls
            .wire()
            .to("/upload")
            .header("Content-Type", "multipart/form-data; boundary=" + BOUNDARY)
            .POST(
                BodyPublishers.fromPublisher(
                    s -> body.subscribe(counted.out(s)), body.contentLength()))
            .build();
    Wire wire = calls.wire();
    String answer =
        wire.sent(request, BodyHandlers.ofString(), counted, wire.limits().work(), progress);
    return calls.json(answer);
  }

  private BodyPublisher form(Path file, long project, long reader, String comment) {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("token", calls.token());
    fields.put("deserializerOid", Long.toString(reader));
    fields.put("merge", "false");
    fields.put("poid", Long.toString(project));
    fields.put("comment", comment);
    fields.put("sync", "true");
    fields.put("compression", "none");
    StringBuilder head = new StringBuilder();
    fields.forEach((name, value) -> head.append(field(name, "")).append(value).append("\r\n"));
    head.append(field("data", "; filename=\"model.ifc\""));
    try {
      return BodyPublishers.concat(
          BodyPublishers.ofString(head.toString()),
          BodyPublishers.ofFile(file),
          BodyPublishers.ofString("\r\n--" + BOUNDARY + "--\r\n"));
    } catch (FileNotFoundException e) {
      throw new InputException(
          Place.NOWHERE.inFile(file.toString()), "there is no such file", "Check the path.");
    }
  }

  private static String field(String name, String more) {
    return "--"
        + BOUNDARY
        + "\r\nContent-Disposition: form-data; name=\""
        + name
        + "\""
        + more
        + "\r\n\r\n";
  }
}

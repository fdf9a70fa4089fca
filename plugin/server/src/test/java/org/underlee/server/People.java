package org.underlee.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** People of the test server, and what its administrator does for them. */
final class People {
  static final Login ADMIN = new Login.User(TestServer.ADMIN, TestServer.PASSWORD);

  private static final Path SAMPLES = Path.of(System.getProperty("underlee.root"), "samples");

  private final Calls admin;

  People(URI address) {
    admin = new Calls(new Wire(address, Limits.USUAL));
    admin.logIn(ADMIN);
  }

  static Path sample(String name) {
    return SAMPLES.resolve(name).resolve(name + ".ifc");
  }

  /** Makes an empty project, and gives its number. */
  long project(String name, String schema) {
    return admin
        .change("ServiceInterface", "addProject", Map.of("projectName", name, "schema", schema))
        .path("oid")
        .asLong();
  }

  long subProject(String name, long parent, String schema) {
    return admin
        .change(
            "ServiceInterface",
            "addProjectAsSubProject",
            Map.of("projectName", name, "parentPoid", parent, "schema", schema))
        .path("oid")
        .asLong();
  }

  /** A person with the password of all who are tested. */
  long person(String name) {
    Map<String, Object> user = new HashMap<>();
    user.put("username", name);
    user.put("password", TestServer.PASSWORD);
    user.put("name", name);
    user.put("type", "USER");
    user.put("selfRegistration", false);
    user.put("resetUrl", "");
    return admin.change("ServiceInterface", "addUserWithPassword", user).path("oid").asLong();
  }

  /** The same, where another test may have made the person. */
  long personOnce(String name) {
    for (JsonNode user : read("getAllUsers", Map.of())) {
      if (user.path("username").asText().equals(name)) {
        return user.path("oid").asLong();
      }
    }
    return person(name);
  }

  void mayWorkIn(long person, long project) {
    admin.change("ServiceInterface", "addUserToProject", Map.of("uoid", person, "poid", project));
  }

  JsonNode read(String method, Map<String, ?> parameters) {
    return admin.read("ServiceInterface", method, parameters);
  }

  JsonNode change(String service, String method, Map<String, ?> parameters) {
    return admin.change(service, method, parameters);
  }

  /** A project of IFC4 with the pine deck as its first revision. */
  static Revision pineDeck(ModelServer server, String project) {
    return server.checkIn(
        server.project(project),
        Optional.empty(),
        sample("pine-deck"),
        "the designer's",
        Progress.NONE);
  }

  /** The same once more, on what is there; gives the new revision's number. */
  static int pineDeckAgain(ModelServer server, String project) {
    Project there = server.project(project);
    return server
        .checkIn(
            there,
            Optional.of(server.newest(there)),
            sample("pine-deck"),
            "the designer's again",
            Progress.NONE)
        .number();
  }
}

package org.underlee.server;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.Map;

/** The server's JSON interface: a method of one of its services, called by name. */
final class Calls {
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Wire wire;
  private String token = "";

  Calls(Wire wire) {
    this.wire = wire;
  }

  Wire wire() {
    return wire;
  }

  String token() {
    return token;
  }

  void logIn(Login login) {
    token =
        login instanceof Login.User user
            ? read(
                    "AuthInterface",
                    "login",
                    Map.of("username", user.name(), "password", user.password()))
                .asText()
            : read(
                    "AuthInterface",
                    "loginUserToken",
                    Map.of("token", ((Login.Token) login).secret()))
                .asText();
  }

  /** Calls a method that changes nothing, and may therefore be called again. */
  JsonNode read(String service, String method, Map<String, ?> parameters) {
    return parsed(wire.twice(request(service, method, parameters), BodyHandlers.ofString()));
  }

  /** Calls a method that changes something: once. */
  JsonNode change(String service, String method, Map<String, ?> parameters) {
    return parsed(
        wire.sent(
            request(service, method, parameters),
            BodyHandlers.ofString(),
            new Counted(),
            wire.limits().answer(),
            Progress.NONE));
  }

  private HttpRequest request(String service, String method, Map<String, ?> parameters) {
    ObjectNode call = JSON.createObjectNode();
    if (!token.isEmpty()) {
      call.put("token", token);
    }
    ObjectNode request = call.putObject("request");
    request.put("interface", service).put("method", method);
    request.set("parameters", JSON.valueToTree(parameters));
    return wire.to("/json")
        .header("Content-Type", "application/json")
        .POST(BodyPublishers.ofString(call.toString()))
        .build();
  }

  private JsonNode parsed(String text) {
    JsonNode response = json(text).path("response");
    if (response.has("exception")) {
      throw refused(response.path("exception").path("message").asText("no reason given"));
    }
    if (!response.has("result")) {
      throw noModelServer();
    }
    return response.path("result");
  }

  JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw noModelServer();
    }
  }

  ServerException refused(String why) {
    return new ServerException(
        wire.base() + " refuses: " + why,
        "Check the name, the password or token, and your rights in the project.");
  }

  private ServerException noModelServer() {
    return new ServerException(
        wire.base() + " answers, but not as a model server.",
        "Give the address that the server's own pages have, such as http://models.example:8082.");
  }
}

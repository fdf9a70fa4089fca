package org.underlee.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.underlee.step.StepFile;

/**
 * A shared model server, as one person sees it. Questions are asked again once when the connection
 * breaks; a check-in never is.
 *
 * <p>Speaks the JSON interface of version 1.5. Every method throws {@link ServerException} when the
 * server is gone, refuses or fails. Interrupting the calling thread cancels.
 */
public final class ModelServer {
  private static final String SERVICE = "ServiceInterface";
  private static final String VERSION = "1.5";

  private final Calls calls;
  private final Transfer transfer;
  private final String user;

  private ModelServer(Calls calls, String user) {
    this.calls = calls;
    this.transfer = new Transfer(calls);
    this.user = user;
  }

  /** Logs in, after a look at whether this is a server that is understood. */
  public static ModelServer at(URI address, Login login, Limits limits) {
    Calls calls = new Calls(new Wire(address, limits));
    JsonNode version = calls.read("AdminInterface", "getServerInfo", Map.of()).path("version");
    String number = version.path("major").asText() + "." + version.path("minor").asText();
    if (!number.equals(VERSION)) {
      throw new ServerException(
          address
              + " runs version "
              + number
              + " of the model server; this client knows "
              + VERSION,
          "Download the model in the server's own pages and work on the file.");
    }
    calls.logIn(login);
    JsonNode who = calls.read("AuthInterface", "getLoggedInUser", Map.of());
    return new ModelServer(calls, who.path("username").asText());
  }

  /** Who is at work, as revisions name them. */
  String user() {
    return user;
  }

  /** Every project that this person may read, by name. */
  public List<Project> projects() {
    List<JsonNode> nodes = new ArrayList<>();
    calls.read(SERVICE, "getAllReadableProjects", Map.of()).forEach(nodes::add);
    Map<Long, JsonNode> byOid =
        nodes.stream().collect(Collectors.toMap(n -> n.path("oid").asLong(), Function.identity()));
    return nodes.stream()
        .filter(n -> n.path("state").asText().equals("ACTIVE"))
        .map(n -> project(n, byOid))
        .sorted((a, b) -> a.name().compareTo(b.name()))
        .toList();
  }

  private static Project project(JsonNode node, Map<Long, JsonNode> all) {
    long parent = node.path("parentId").asLong(-1);
    List<Long> revisions = new ArrayList<>();
    node.path("revisions").forEach(r -> revisions.add(r.asLong()));
    return new Project(
        node.path("oid").asLong(),
        path(node, all),
        parent < 0 ? Optional.empty() : Optional.of(parent),
        node.path("schema").asText(),
        revisions);
  }

  private static String path(JsonNode node, Map<Long, JsonNode> all) {
    JsonNode parent = all.get(node.path("parentId").asLong(-1));
    String name = node.path("name").asText();
    return parent == null ? name : path(parent, all) + "/" + name;
  }

  /** The project of a name. */
  public Project project(String name) {
    List<Project> all = projects();
    return all.stream()
        .filter(p -> p.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new ServerException(
                    "There is no project \"" + name + "\" that you may read.",
                    all.isEmpty()
                        ? "You may read no project; ask who runs the server."
                        : "There are: "
                            + all.stream().map(Project::name).collect(Collectors.joining(", "))));
  }

  /** All revisions of a project, oldest first. */
  public List<Revision> revisions(Project project) {
    List<Revision> all = new ArrayList<>();
    Map<Long, String> names = new HashMap<>();
    calls
        .read(SERVICE, "getAllRevisionsOfProject", Map.of("poid", project.oid()))
        .forEach(node -> all.add(revision(node, names)));
    all.sort(Comparator.comparingInt(Revision::number));
    return all;
  }

  private Revision revision(long oid) {
    return revision(calls.read(SERVICE, "getRevision", Map.of("roid", oid)), new HashMap<>());
  }

  /** A revision; names of people that were looked up are kept. */
  private Revision revision(JsonNode node, Map<Long, String> names) {
    return new Revision(
        node.path("oid").asLong(),
        node.path("id").asInt(),
        names.computeIfAbsent(node.path("userId").asLong(), this::user),
        Instant.ofEpochMilli(node.path("date").asLong()),
        node.path("comment").asText(""),
        node.path("size").asLong());
  }

  private String user(long oid) {
    return calls.read(SERVICE, "getUserByUoid", Map.of("uoid", oid)).path("username").asText("");
  }

  /**
   * The newest revision of a project.
   *
   * @throws ServerException when it has none
   */
  public Revision newest(Project project) {
    return project
        .newest()
        .map(this::revision)
        .orElseThrow(
            () ->
                new ServerException(
                    "The project \"" + project.name() + "\" is empty.",
                    "Put a model there first: underlee server put URL FILE --project NAME"));
  }

  /** A revision by its number within the project. */
  public Revision revision(Project project, int number) {
    List<Revision> all = revisions(project);
    return all.stream()
        .filter(r -> r.number() == number)
        .findFirst()
        .orElseThrow(
            () ->
                new ServerException(
                    "The project \"" + project.name() + "\" has no revision " + number + ".",
                    "It has "
                        + all.stream()
                            .map(r -> Integer.toString(r.number()))
                            .collect(Collectors.joining(", "))
                        + "."));
  }

  /** The text of a revision. */
  public byte[] download(Project project, Revision revision, Progress progress) {
    long writer =
        calls
            .read(SERVICE, "getSerializerByName", Map.of("serializerName", writer(project)))
            .path("oid")
            .asLong();
    long topic =
        calls
            // A topic that nobody fetches from costs nothing, so it may be asked for twice.
            .read(
                SERVICE,
                "download",
                Map.of(
                    "roids",
                    List.of(revision.oid()),
                    "query",
                    "{}",
                    "serializerOid",
                    writer,
                    "sync",
                    false))
            .asLong();
    return transfer.fetch(topic, progress);
  }

  /** The "(Streaming)" writers keep what the file's header says. */
  private static String writer(Project project) {
    return switch (project.schema().toLowerCase(Locale.ROOT)) {
      case "ifc2x3tc1" -> "Ifc2x3tc1 (Streaming)";
      case "ifc4" -> "Ifc4 (Streaming)";
      default ->
          throw new ServerException(
              "The project \"" + project.name() + "\" has the schema " + project.schema() + ".",
              "Work in a project of IFC2X3 or IFC4.");
    };
  }

  /**
   * Adds a file as a new revision, after a look at whether it is still made from the newest one.
   *
   * @param base the revision that the file was made from; empty when the project was empty
   * @param comment says what changed
   * @return the new revision
   */
  public Revision checkIn(
      Project project, Optional<Revision> base, Path file, String comment, Progress progress) {
    ProjectSchema.require(StepFile.read(file), project);
    requireNewest(project, base, file);
    long reader =
        calls
            .read(
                SERVICE,
                "getSuggestedDeserializerForExtension",
                Map.of("extension", "ifc", "poid", project.oid()))
            .path("oid")
            .asLong();
    CheckIn checkIn = new CheckIn(this, project, file, comment);
    checkIn.judge(() -> transfer.send(file, project.oid(), reader, comment, progress));
    return checkIn.landed(base);
  }

  /** The project as it is at this moment. */
  Project again(Project project) {
    JsonNode node = calls.read(SERVICE, "getProjectByPoid", Map.of("poid", project.oid()));
    List<Long> revisions = new ArrayList<>();
    node.path("revisions").forEach(r -> revisions.add(r.asLong()));
    return new Project(
        project.oid(), project.name(), project.parent(), project.schema(), revisions);
  }

  private void requireNewest(Project project, Optional<Revision> base, Path file) {
    Optional<Long> there = again(project).newest();
    if (!there.equals(base.map(Revision::oid))) {
      Revision newer = there.map(this::revision).orElseThrow(() -> gone(project, file));
      throw new Overtaken(
          newer,
          newer,
          "Revision "
              + newer.number()
              + " by "
              + newer.user()
              + " (\""
              + newer.comment()
              + "\") has come since "
              + base.map(b -> "revision " + b.number()).orElse("the project was empty")
              + ", from which the file was made.",
          "Nothing was put. Get the newer revision and work on that; your copy is " + file + ".");
    }
  }

  private static ServerException gone(Project project, Path file) {
    return new ServerException(
        "The project \"" + project.name() + "\" has no revision any more.",
        "Ask who runs the server; your copy is " + file + ".");
  }
}

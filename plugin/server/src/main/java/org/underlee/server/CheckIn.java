package org.underlee.server;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;

/** What became of a check-in: it is never tried twice, so each end of it must be told. */
final class CheckIn {
  private static final int LOOKS = 8;
  private static final Duration BETWEEN_LOOKS = Duration.ofMillis(500);

  private final ModelServer server;
  private final Project project;
  private final Path file;
  private final String comment;

  CheckIn(ModelServer server, Project project, Path file, String comment) {
    this.server = server;
    this.project = project;
    this.file = file;
    this.comment = comment;
  }

  /** Takes the server's account, or finds out what happened when none came. */
  void judge(Supplier<JsonNode> sending) {
    JsonNode account;
    try {
      account = sending.get();
    } catch (ServerException e) {
      if (landed().isEmpty()) {
        throw brokenOff(e);
      }
      return;
    }
    // The server may fail at telling of a check-in that it did.
    if (account.has("exception") && landed().isEmpty()) {
      throw refused(account.path("exception").path("message").asText("no reason given"));
    }
    List<String> errors = new ArrayList<>();
    account.path("errors").forEach(e -> errors.add(e.asText()));
    // The state may still read STARTED when the work is done; whether it landed is looked up.
    if (account.path("state").asText().equals("AS_ERROR") || !errors.isEmpty()) {
      throw refused(errors.isEmpty() ? "no reason given" : String.join("; ", errors));
    }
  }

  /** The new revision; the one before it must be the base. */
  Revision landed(Optional<Revision> base) {
    List<Revision> all = revisions();
    Revision ours =
        all.stream()
            .filter(this::isOurs)
            .reduce((a, b) -> b)
            .orElseThrow(
                () ->
                    new ServerException(
                        "The server took the model but shows no new revision of it.",
                        "Look at the project with list before trying again. " + kept()));
    int before = all.indexOf(ours) - 1;
    Optional<Long> under = before < 0 ? Optional.empty() : Optional.of(all.get(before).oid());
    if (!under.equals(base.map(Revision::oid))) {
      Revision theirs = all.get(before);
      throw new Overtaken(
          theirs,
          ours,
          "Revision "
              + ours.number()
              + " is in, but revision "
              + theirs.number()
              + " by "
              + theirs.user()
              + " came at the same moment and is not in it.",
          "Run design again from revision "
              + theirs.number()
              + ", so that the newest has both. "
              + kept());
    }
    return ours;
  }

  private List<Revision> revisions() {
    try {
      return server.revisions(server.again(project));
    } catch (ServerException e) {
      throw new ServerException(
          "The server took the model, and was gone before it said as which revision: " + e.what(),
          "Look with list whether it is there before putting it again. " + kept());
    }
  }

  private boolean isOurs(Revision revision) {
    return revision.comment().equals(comment)
        && revision.user().equals(server.user())
        && !project.revisions().contains(revision.oid());
  }

  /** What came of a check-in that the server complained of: it may still be at it. */
  private Optional<Revision> landed() {
    try {
      Optional<Revision> found = look();
      for (int again = 0; found.isEmpty() && again < LOOKS; again++) {
        LockSupport.parkNanos(BETWEEN_LOOKS.toNanos());
        found = look();
      }
      return found;
    } catch (ServerException e) {
      return Optional.empty();
    }
  }

  private Optional<Revision> look() {
    return server.revisions(server.again(project)).stream().filter(this::isOurs).findFirst();
  }

  private ServerException brokenOff(ServerException why) {
    return new ServerException(
        "The check-in broke off: " + why.what(),
        "The server may still be reading the model, or have none of it: look with list before"
            + " putting it again. "
            + kept());
  }

  private ServerException refused(String why) {
    return new ServerException(
        "The server did not take the model: " + why, "The project is as it was. " + kept());
  }

  private String kept() {
    return "Your copy is " + file + ".";
  }
}

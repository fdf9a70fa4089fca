package org.underlee.server;

import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.underlee.command.ExitCode;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What every verb that speaks with a server has: the address, who asks, and how it fails. */
abstract class AtServer implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "URL", description = "The server's address.")
  URI address = URI.create("");

  @Option(
      names = "--user",
      paramLabel = "NAME",
      description = "Who logs in; the secret is never given here.")
  Optional<String> user = Optional.empty();

  @Spec CommandSpec spec = CommandSpec.create();

  /** The environment, for secrets. */
  Map<String, String> environment = System.getenv();

  abstract int work();

  @Override
  public Integer call() {
    String scheme = Optional.ofNullable(address.getScheme()).orElse("");
    boolean web = scheme.equals("http") || scheme.equals("https");
    if (!web || address.getHost() == null) {
      throw new ParameterException(
          spec.commandLine(), address + ": give an address such as http://models.example:8082");
    }
    try {
      return work();
    } catch (ServerException e) {
      say(e.what());
      say(e.advice());
      return ExitCode.SERVER;
    }
  }

  ModelServer server() {
    String plain = address.toString();
    String base = plain.endsWith("/") ? plain.substring(0, plain.length() - 1) : plain;
    return ModelServer.at(URI.create(base), login(), Limits.USUAL);
  }

  private Login login() {
    Secrets secrets = new Secrets(environment);
    Optional<String> token = secrets.token().filter(t -> user.isEmpty());
    if (token.isPresent()) {
      return new Login.Token(token.get());
    }
    String name = user.orElseThrow(() -> usage("give --user NAME, or a token in " + Secrets.TOKEN));
    return new Login.User(
        name,
        secrets
            .password(name, address)
            .orElseThrow(
                () ->
                    usage(
                        "there is no terminal to ask at; put the password into "
                            + Secrets.PASSWORD)));
  }

  private ParameterException usage(String what) {
    return new ParameterException(spec.commandLine(), what);
  }

  /** Tells how far a transfer is, a line now and then. */
  Progress progress(String what) {
    return (done, total) ->
        say(
            total > 0
                ? String.format(
                    Locale.ROOT, "%s: %.1f of %.1f MB", what, megabytes(done), megabytes(total))
                : String.format(Locale.ROOT, "%s: %.1f MB", what, megabytes(done)));
  }

  private static double megabytes(long bytes) {
    return bytes / 1e6;
  }

  void say(String text) {
    err().println(text);
  }

  PrintWriter err() {
    return spec.commandLine().getErr();
  }

  PrintWriter out() {
    return spec.commandLine().getOut();
  }

  /** A project's name as a file's. */
  static Path fileOf(Project project, Revision revision) {
    String name = project.name().replaceAll("[^\\p{L}\\p{N} ._-]+", "-").strip();
    return Path.of(name + ".r" + revision.number() + ".ifc");
  }
}

package org.underlee.server;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where a secret comes from: the environment, a program that asks the system's key store, or the
 * terminal. Never an option, since lists of processes and histories of commands show those.
 */
final class Secrets {
  static final String PASSWORD = "UNDERLEE_SERVER_PASSWORD";
  static final String TOKEN = "UNDERLEE_SERVER_TOKEN";

  /** Names a program that prints the password; it is given the name and the server's address. */
  static final String ASK = "UNDERLEE_SERVER_ASK";

  private final Map<String, String> environment;

  Secrets(Map<String, String> environment) {
    this.environment = environment;
  }

  /** The token that stands for name and password. */
  Optional<String> token() {
    return given(TOKEN);
  }

  /**
   * The password of a person; empty when it is given nowhere and nobody can be asked.
   *
   * @throws ServerException when the program that should know it does not give it
   */
  Optional<String> password(String name, URI address) {
    return given(PASSWORD)
        .or(() -> given(ASK).map(program -> printed(program, name, address)))
        .or(() -> typed(name, address));
  }

  private Optional<String> given(String variable) {
    return Optional.ofNullable(environment.get(variable)).filter(v -> !v.isEmpty());
  }

  private static Optional<String> typed(String name, URI address) {
    return Optional.ofNullable(System.console())
        .map(c -> c.readPassword("Password of %s at %s: ", name, address))
        .map(String::new);
  }

  private static String printed(String program, String name, URI address) {
    try {
      Process process =
          new ProcessBuilder(List.of(program, name, address.toString()))
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
      try (BufferedReader out = process.inputReader()) {
        return Optional.ofNullable(out.readLine())
            .filter(l -> !l.isEmpty())
            .orElseThrow(() -> none(program, "it printed nothing"));
      }
    } catch (IOException e) {
      throw none(program, String.valueOf(e.getMessage()));
    }
  }

  private static ServerException none(String program, String why) {
    return new ServerException(
        "The program in " + ASK + ", " + program + ", gives no password: " + why,
        "Run it by hand with your name and the server's address.");
  }
}

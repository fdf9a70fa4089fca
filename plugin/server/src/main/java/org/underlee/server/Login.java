package org.underlee.server;

/** Who is at work. Its text never shows the secret. */
public sealed interface Login {
  /** A person of the server, with a password. */
  record User(String name, String password) implements Login {
    @Override
    public String toString() {
      return "user " + name;
    }
  }

  /** The token that the server gives a person in place of name and password. */
  record Token(String secret) implements Login {
    @Override
    public String toString() {
      return "token";
    }
  }
}

package org.underlee.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.underlee.finding.InputException;
import org.underlee.finding.Place;

/** An EXPRESS text, cut into tokens, and a place in it. */
final class Tokens {
  /** Signs of several characters, the longest first. */
  private static final List<String> SIGNS =
      List.of(":<>:", ":=:", ":=", "<=", ">=", "<>", "<*", "||", "**");

  private final String name;
  private final List<Token> tokens;
  private int at;

  private Tokens(String name, List<Token> tokens) {
    this.name = name;
    this.tokens = tokens;
  }

  static Tokens of(String text, String name) {
    return new Tokens(name, new Cutter(text).cut());
  }

  Token next() {
    Token token = peek();
    at += token.kind() == Token.Kind.END ? 0 : 1;
    return token;
  }

  Token peek() {
    return tokens.get(at);
  }

  boolean at(String wanted) {
    return peek().is(wanted);
  }

  boolean atAny(Set<String> wanted) {
    return peek().kind() != Token.Kind.TEXT && wanted.contains(peek().text());
  }

  boolean atEnd() {
    return peek().kind() == Token.Kind.END;
  }

  /** Whether the token after the next is this one. */
  boolean thenAt(String wanted) {
    return at + 1 < tokens.size() && tokens.get(at + 1).is(wanted);
  }

  /** Steps over a token if it is the next. */
  boolean take(String wanted) {
    boolean there = at(wanted);
    at += there ? 1 : 0;
    return there;
  }

  void expect(String wanted) {
    if (!take(wanted)) {
      throw unexpected("\"" + wanted + "\"");
    }
  }

  String word() {
    if (peek().kind() != Token.Kind.WORD) {
      throw unexpected("a name");
    }
    return next().text();
  }

  /** Each word as it is written first, by its upper case. */
  Map<String, String> spellings() {
    return tokens.stream()
        .filter(t -> t.kind() == Token.Kind.WORD)
        .collect(Collectors.toMap(Token::text, Token::spelled, (first, later) -> first));
  }

  /** Steps over everything through a token. */
  void skipThrough(String wanted) {
    while (!atEnd() && !at(wanted)) {
      at++;
    }
    expect(wanted);
  }

  InputException unexpected(String wanted) {
    Token found = peek();
    String what = found.kind() == Token.Kind.END ? "the end of the file" : found.text();
    return new InputException(
        Place.text(found.line(), 1).inFile(name),
        "the schema should have " + wanted + " here but has " + what,
        "Give the EXPRESS file (.exp) that the standard publishes, as it is.");
  }

  /** Cuts a text into tokens. Comments are left out. */
  private static final class Cutter {
    private final String text;
    private final List<Token> tokens = new ArrayList<>();
    private int at;
    private int line = 1;

    Cutter(String text) {
      this.text = text;
    }

    List<Token> cut() {
      while (at < text.length()) {
        char c = text.charAt(at);
        if (c == '\n') {
          line++;
          at++;
        } else if (Character.isWhitespace(c)) {
          at++;
        } else if (text.startsWith("(*", at)) {
          comment();
        } else if (text.startsWith("--", at)) {
          int end = text.indexOf('\n', at);
          at = end < 0 ? text.length() : end;
        } else {
          token(c);
        }
      }
      tokens.add(new Token(Token.Kind.END, "", "", line));
      return tokens;
    }

    private void comment() {
      int depth = 0;
      do {
        boolean opens = text.startsWith("(*", at);
        boolean closes = text.startsWith("*)", at);
        depth += opens ? 1 : closes ? -1 : 0;
        line += text.charAt(at) == '\n' ? 1 : 0;
        at += opens || closes ? 2 : 1;
      } while (depth > 0 && at < text.length());
    }

    private void token(char c) {
      if (c == '\'') {
        int end = text.indexOf('\'', at + 1);
        end = end < 0 ? text.length() : end;
        add(Token.Kind.TEXT, text.substring(at + 1, end));
        at = end + 1;
      } else if (Character.isLetter(c)) {
        word();
      } else if (Character.isDigit(c)) {
        number();
      } else {
        String sign = SIGNS.stream().filter(s -> text.startsWith(s, at)).findFirst().orElse("" + c);
        add(Token.Kind.SIGN, sign);
        at += sign.length();
      }
    }

    private void word() {
      int from = at;
      while (at < text.length()
          && (Character.isLetterOrDigit(text.charAt(at)) || text.charAt(at) == '_')) {
        at++;
      }
      add(Token.Kind.WORD, text.substring(from, at));
    }

    private void number() {
      int from = at;
      digits();
      if (at < text.length() && text.charAt(at) == '.') {
        at++;
        digits();
      }
      if (at < text.length() && Character.toUpperCase(text.charAt(at)) == 'E') {
        at++;
        at += at < text.length() && "+-".indexOf(text.charAt(at)) >= 0 ? 1 : 0;
        digits();
      }
      add(Token.Kind.NUMBER, text.substring(from, at));
    }

    private void digits() {
      while (at < text.length() && Character.isDigit(text.charAt(at))) {
        at++;
      }
    }

    private void add(Token.Kind kind, String what) {
      String text = kind == Token.Kind.TEXT ? what : what.toUpperCase(Locale.ROOT);
      tokens.add(new Token(kind, text, what, line));
    }
  }
}

package org.underlee.step;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Ways to damage a model, each by a source of chance that can be seeded. */
enum Mutation {
  CUT_END {
    @Override
    String of(String text, Random random) {
      return text.substring(0, random.nextInt(text.length() + 1));
    }
  },
  CUT_OUT {
    @Override
    String of(String text, Random random) {
      int from = random.nextInt(text.length() + 1);
      int to = Math.min(text.length(), from + 1 + random.nextInt(200));
      return text.substring(0, from) + text.substring(to);
    }
  },
  SPLICE {
    @Override
    String of(String text, Random random) {
      int from = random.nextInt(text.length() + 1);
      String piece = text.substring(from, Math.min(text.length(), from + random.nextInt(300)));
      return inserted(text, random, piece);
    }
  },
  FLIP_BYTES {
    @Override
    String of(String text, Random random) {
      StringBuilder damaged = new StringBuilder(text);
      for (int i = random.nextInt(20); i >= 0 && !text.isEmpty(); i--) {
        int at = random.nextInt(text.length());
        damaged.setCharAt(at, (char) (text.charAt(at) ^ (1 << random.nextInt(8))));
      }
      return damaged.toString();
    }
  },
  SWAP_REFERENCES {
    @Override
    String of(String text, Random random) {
      return replaced(text, random, REFERENCE, reference(text, random));
    }
  },
  POINT_BACK {
    /** To itself or to what refers to it, so that chains of references close. */
    @Override
    String of(String text, Random random) {
      Matcher line = somewhere(INSTANCE, text, random);
      if (line == null) {
        return text;
      }
      String id = line.group(1);
      String body = replaced(line.group(2), random, REFERENCE, id);
      return text.substring(0, line.start(2)) + body + text.substring(line.end(2));
    }
  },
  SWAP_DEFINITIONS {
    @Override
    String of(String text, Random random) {
      Matcher line = somewhere(INSTANCE, text, random);
      return line == null
          ? text
          : replaced(
              text.substring(0, line.start(1))
                  + reference(text, random)
                  + text.substring(line.end(1)),
              random,
              INSTANCE_NUMBER,
              line.group(1) + "=");
    }
  },
  HUGE_NUMBER {
    @Override
    String of(String text, Random random) {
      return replaced(text, random, NUMBER, pick(random, HUGE));
    }
  },
  HUGE_REFERENCE {
    @Override
    String of(String text, Random random) {
      String[] ids = {"#0", "#999999999999999999", "#9999999999999999999", "#4294967297", "#"};
      return replaced(text, random, REFERENCE, pick(random, ids));
    }
  },
  ODD_COUNT {
    /** Small whole numbers and zeros where lengths, indices and knots stand. */
    @Override
    String of(String text, Random random) {
      return replaced(
          text, random, NUMBER, pick(random, "0", "-1", "0.", "-0.", "2147483648", "1"));
    }
  },
  BAD_ESCAPE {
    @Override
    String of(String text, Random random) {
      String[] escapes = {
        "\\X2\\D8",
        "\\X4\\FFFFFFFF\\X0\\",
        "\\S\\",
        "\\X\\",
        "\\X0\\",
        "\\P",
        "\\",
        "\\X2\\\\X0\\",
        "'"
      };
      return replaced(text, random, OPENING, "'" + pick(random, escapes));
    }
  },
  NEST_DEEPLY {
    @Override
    String of(String text, Random random) {
      int depth = pick(random, 3, 100, 127, 128, 129, 100_000);
      String nested = "(".repeat(depth) + (random.nextInt(3) == 0 ? "" : ")".repeat(depth));
      return replaced(text, random, VALUE, "," + nested);
    }
  },
  DELETE_SECTION_END {
    @Override
    String of(String text, Random random) {
      return replaced(text, random, SECTION_END, pick(random, "", "ENDSEC", ";", "DATA;"));
    }
  },
  REPEAT_HEADER {
    @Override
    String of(String text, Random random) {
      int end = text.indexOf("DATA;");
      return end < 0 ? text : text.substring(0, end) + text;
    }
  },
  REPEAT_DATA {
    @Override
    String of(String text, Random random) {
      int from = text.indexOf("DATA;");
      int to = text.lastIndexOf("END-ISO");
      return from < 0 || to < from
          ? text
          : text.substring(0, to) + text.substring(from, to) + text.substring(to);
    }
  },
  INSERT_MARK {
    @Override
    String of(String text, Random random) {
      return inserted(
          text,
          random,
          pick(random, "/*", "*/", "'", "\"", ";", "#", "(", ")", "=", "$", ",", "\0"));
    }
  },
  INSERT_COMMENT {
    @Override
    String of(String text, Random random) {
      return inserted(text, random, pick(random, "/**/", "/*'*/", "/*;#1=A();*/", "/* /* */"));
    }
  },
  LEAVE_OUT_VALUE {
    @Override
    String of(String text, Random random) {
      return replaced(text, random, VALUE, pick(random, "", ",$", ",*", ",()", ",(())", ",.T."));
    }
  },
  CHANGE_TYPE {
    @Override
    String of(String text, Random random) {
      Matcher other = somewhere(KEYWORD, text, random);
      return other == null ? text : replaced(text, random, KEYWORD, other.group());
    }
  },
  WRAP_VALUE {
    @Override
    String of(String text, Random random) {
      String wrapped = pick(random, ",IFCLABEL('x')", ",IFCREAL(IFCREAL(1.))", ",'x'", ",\"0F\"");
      return replaced(text, random, VALUE, wrapped);
    }
  },
  DROP_INSTANCE {
    @Override
    String of(String text, Random random) {
      return replaced(text, random, INSTANCE, "");
    }
  };

  private static final Pattern REFERENCE = Pattern.compile("#\\d+(?=[,)])");
  private static final Pattern INSTANCE = Pattern.compile("(#\\d+) ?=([^;]*);");
  private static final Pattern INSTANCE_NUMBER = Pattern.compile("#\\d+ ?=");
  private static final Pattern NUMBER =
      Pattern.compile("(?<=[,(])-?\\d+\\.?\\d*(E-?\\d+)?(?=[,)])");
  private static final Pattern OPENING = Pattern.compile("'(?=[^,;)])");
  private static final Pattern VALUE = Pattern.compile(",[^,()';]+(?=[,)])");
  private static final Pattern SECTION_END = Pattern.compile("ENDSEC;");
  private static final Pattern KEYWORD = Pattern.compile("(?<==)IFC[A-Z0-9]+");
  private static final String[] HUGE = {
    "1.E308",
    "-1.E308",
    "1.E-320",
    "1.E309",
    "9".repeat(400),
    "1." + "0".repeat(400) + "1",
    "1.E15",
    "1E99999999999"
  };

  /** The damaged text; the same for the same state of {@code random}. */
  abstract String of(String text, Random random);

  /** One to three kinds of damage at once. */
  static byte[] mutant(byte[] model, long seed) {
    Random random = new Random(seed);
    String text = new String(model, StandardCharsets.ISO_8859_1);
    for (int i = random.nextInt(3); i >= 0; i--) {
      text = pick(random, values()).of(text, random);
    }
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @SafeVarargs
  private static <T> T pick(Random random, T... choices) {
    return choices[random.nextInt(choices.length)];
  }

  private static String inserted(String text, Random random, String piece) {
    int at = random.nextInt(text.length() + 1);
    return text.substring(0, at) + piece + text.substring(at);
  }

  /** The first match after a place by chance, or from the beginning. */
  private static Matcher somewhere(Pattern pattern, String text, Random random) {
    Matcher matcher = pattern.matcher(text);
    boolean found = matcher.find(random.nextInt(text.length() + 1)) || matcher.find(0);
    return found ? matcher : null;
  }

  private static String replaced(String text, Random random, Pattern pattern, String by) {
    Matcher there = somewhere(pattern, text, random);
    return there == null
        ? text
        : text.substring(0, there.start()) + by + text.substring(there.end());
  }

  private static String reference(String text, Random random) {
    Matcher other = somewhere(REFERENCE, text, random);
    return other == null ? "#1" : other.group();
  }
}

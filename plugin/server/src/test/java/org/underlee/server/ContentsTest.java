package org.underlee.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class ContentsTest {
  private static final Pattern NUMBER = Pattern.compile("#(\\d+)");

  @Test
  void anotherOrderAndOtherNumbersSayTheSame() throws Exception {
    String deck = Files.readString(People.sample("pine-deck"));
    for (int seed = 1; seed <= 5; seed++) {
      assertThat(of(shuffled(deck, seed))).isEqualTo(of(deck));
    }
  }

  @Test
  void whatIsMovedRenamedOrGoneSaysSomethingElse() throws Exception {
    String deck = Files.readString(People.sample("pine-deck"));
    assertThat(of(deck.replaceFirst("2\\.666666666667", "2.666666666668"))).isNotEqualTo(of(deck));
    assertThat(of(deck.replaceFirst("'Deck'", "'Terrace'"))).isNotEqualTo(of(deck));
    assertThat(of(deck.replace("=IFCBUILDINGSTOREY(", "=IFCBUILDING("))).isNotEqualTo(of(deck));
    assertThat(of(deck.replaceFirst("#\\d+=IFCRELAGGREGATES[^;]*;", ""))).isNotEqualTo(of(deck));
  }

  private static String of(String model) {
    return Contents.of(model.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static String shuffled(String model, long seed) {
    int from = model.indexOf("DATA;") + "DATA;".length();
    int to = model.lastIndexOf("ENDSEC;");
    List<String> lines = new ArrayList<>(model.substring(from, to).lines().toList());
    Collections.shuffle(lines, new Random(seed));
    String data = NUMBER.matcher(String.join("\n", lines)).replaceAll(n -> "#" + n.group(1) + "7");
    return model.substring(0, from) + data + "\n" + model.substring(to);
  }
}

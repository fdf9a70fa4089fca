package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.underlee.bay.Bay;

/** Sections through one bay of each sort: along it from the house to the gutter, and across it. */
record SectionSheet(Job job) {
  /** Bays of more sorts than this are told of in words; their marks and cuts stand in the lists. */
  private static final int MOST_SORTS = 8;

  private static final double ACROSS_SHARE = 0.42;
  private static final double ALONG_SHARE = 0.3;

  Sheet sheet() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block.Text(job.say("sections.how"), PLAIN));
    int drawn = 0;
    for (Job.Place place : job.places()) {
      SectionCut cut = SectionCut.of(place);
      for (List<Bay> alike : sorts(place).values()) {
        if (drawn++ < MOST_SORTS) {
          blocks.addAll(sections(place, cut, alike));
        }
      }
    }
    if (drawn > MOST_SORTS) {
      blocks.add(new Block.Text(job.say("sections.more", drawn - MOST_SORTS), PLAIN));
    }
    return new Sheet("sections", job.say("sections.title"), false, blocks);
  }

  /** Bays alike in all that a section shows, the commonest sort first. */
  private Map<String, List<Bay>> sorts(Job.Place place) {
    Map<String, List<Bay>> sorts = new LinkedHashMap<>();
    place
        .served()
        .forEach(b -> sorts.computeIfAbsent(sort(place, b), k -> new ArrayList<>()).add(b));
    return sorts.entrySet().stream()
        .sorted((a, b) -> Integer.compare(b.getValue().size(), a.getValue().size()))
        .collect(
            Collectors.toMap(
                Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, LinkedHashMap::new));
  }

  private String sort(Job.Place place, Bay bay) {
    String parts =
        place.partsIn(bay).stream().map(p -> p.kind().word()).collect(Collectors.joining(" "));
    String inIt =
        Stream.concat(
                bay.blocking().stream().map(b -> "b" + job.length(b.bottom())),
                bay.crossings().stream().map(c -> c.way().word() + job.length(c.size())))
            .collect(Collectors.joining(" "));
    return parts + "|" + inIt + "|" + job.length(bay.length());
  }

  private List<Block> sections(Job.Place place, SectionCut cut, List<Bay> alike) {
    Bay bay = alike.get(0);
    String label = place.label(bay);
    String same = alike.stream().skip(1).map(place::label).collect(Collectors.joining(", "));
    String id = label.toLowerCase(Locale.ROOT);
    BaySections sections = new BaySections(job, place, cut, bay);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Heading(
            same.isEmpty() ? job.say("sections.only", label) : job.say("sections.bay", label)));
    if (!same.isEmpty()) {
      blocks.add(new Block.Text(job.say("sections.likewise", same), PLAIN));
    }
    blocks.add(
        new Block.Drawing(
            "section-along-" + id,
            job.say("sections.along", label),
            sections.along(),
            ALONG_SHARE));
    blocks.add(
        new Block.Drawing(
            "section-across-" + id,
            job.say("sections.across", label),
            sections.across(),
            ACROSS_SHARE));
    return blocks;
  }
}

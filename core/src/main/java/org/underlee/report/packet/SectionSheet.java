package org.underlee.report.packet;

import static org.underlee.report.packet.Block.Tone.PLAIN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.underlee.bay.Bay;
import org.underlee.report.packet.Block.Column;

/**
 * Sections through one bay of each sort: along it from the house to the gutter, and across it. Of
 * the other bays of the sort it says every figure of the drawings that is another one there.
 */
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

  /** Bays with the same things in them, the commonest sort first. */
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
                bay.crossings().stream()
                    .map(c -> c.way().word() + job.length(c.size()) + job.length(c.at())))
            .collect(Collectors.joining(" "));
    return parts + "|" + inIt;
  }

  /** All figures of the two drawings of a bay, and where along it something is. */
  List<String> figures(Job.Place place, SectionCut cut, Bay bay) {
    BaySections.Figures figures = new BaySections(job, place, cut, bay).figures();
    return List.of(
        figures.clear(),
        figures.width(),
        figures.high(),
        figures.low(),
        job.length(bay.length()),
        new FramingSheet(job).inBay(place, bay));
  }

  /** Which of the bays are as drawn, and the figures of those that are not. */
  private List<Block> likewise(Job.Place place, SectionCut cut, List<Bay> alike) {
    Map<List<String>, List<String>> named = new LinkedHashMap<>();
    for (Bay bay : alike) {
      named.computeIfAbsent(figures(place, cut, bay), k -> new ArrayList<>()).add(place.label(bay));
    }
    List<Block> blocks = new ArrayList<>();
    List<String> same = named.values().iterator().next();
    if (same.size() > 1) {
      String others = String.join(", ", same.subList(1, same.size()));
      blocks.add(new Block.Text(job.say("sections.likewise", others), PLAIN));
    }
    if (named.size() > 1) {
      blocks.add(new Block.Text(job.say("sections.but", same.get(0)), PLAIN));
      blocks.add(table(named));
    }
    return blocks;
  }

  /** Of the figures those that are not the same in all. */
  private Block table(Map<List<String>, List<String>> named) {
    List<Column> all =
        List.of(
            Column.number(job.say("col.widthCut")),
            Column.number(job.say("col.widthCaught")),
            Column.text(job.say("col.highMark")),
            Column.text(job.say("col.lowMark")),
            Column.number(job.say("col.bayLength")),
            Column.text(job.say("col.inIt")));
    List<Integer> differ =
        IntStream.range(0, all.size())
            .filter(c -> named.keySet().stream().map(f -> f.get(c)).distinct().count() > 1)
            .boxed()
            .toList();
    return new Block.Table(
        Stream.concat(Stream.of(Column.text(job.say("col.bay"))), differ.stream().map(all::get))
            .toList(),
        named.entrySet().stream()
            .map(
                e ->
                    Stream.concat(
                            Stream.of(String.join(", ", e.getValue())),
                            differ.stream().map(c -> e.getKey().get(c)))
                        .toList())
            .toList());
  }

  private List<Block> sections(Job.Place place, SectionCut cut, List<Bay> alike) {
    Bay bay = alike.get(0);
    String label = place.label(bay);
    String id = label.toLowerCase(Locale.ROOT);
    BaySections sections = new BaySections(job, place, cut, bay);
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Heading(
            alike.size() == 1 ? job.say("sections.only", label) : job.say("sections.bay", label)));
    blocks.addAll(likewise(place, cut, alike));
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

package org.underlee.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.underlee.finding.Finding;
import org.underlee.finding.Place;
import org.underlee.finding.Rule;
import org.underlee.step.StepFile;

/** What is wrong, one finding for all instances that break a schema at the same point. */
final class Faults {
  /** Instances named in a finding. */
  private static final int NAMED = 5;

  private static final String ADVICE =
      "Have the program that wrote these instances write them as the schema says.";

  private record Point(Rule rule, String subject) {}

  private static final class Group {
    final String words;
    final List<Long> first = new ArrayList<>();
    int count;

    Group(String words) {
      this.words = words;
    }
  }

  private final StepFile file;
  private final Map<Point, Group> groups = new LinkedHashMap<>();

  Faults(StepFile file) {
    this.file = file;
  }

  /**
   * Notes a fault.
   *
   * @param subject {@code IfcWall.PredefinedType}
   * @param words what is wrong with the first that is noted
   */
  void add(Rule rule, String subject, String words, int instance) {
    Group group = groups.computeIfAbsent(new Point(rule, subject), p -> new Group(words));
    group.count++;
    if (group.first.size() < NAMED) {
      group.first.add(file.id(instance));
    }
  }

  /** Notes what is about no instance in particular. */
  void add(Rule rule, String subject, String words) {
    groups.computeIfAbsent(new Point(rule, subject), p -> new Group(words)).count++;
  }

  List<Finding> findings() {
    return groups.entrySet().stream().map(e -> finding(e.getKey(), e.getValue())).toList();
  }

  private Finding finding(Point point, Group group) {
    String words = (point.subject + " " + group.words).strip();
    if (group.count > 1) {
      String ids = group.first.stream().map(id -> "#" + id).collect(Collectors.joining(", "));
      words += "; " + group.count + " instances: " + ids;
      words += group.count > NAMED ? ", …" : "";
    }
    Place place =
        group.first.isEmpty()
            ? Place.NOWHERE.inFile(file.name())
            : file.place(file.offset(file.find(group.first.get(0)))).atInstance(group.first.get(0));
    return Finding.of(point.rule, place, words, ADVICE);
  }
}

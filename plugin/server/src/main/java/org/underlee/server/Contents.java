package org.underlee.server;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.underlee.step.Sha256;
import org.underlee.step.StepFile;
import org.underlee.step.StepInstance;
import org.underlee.step.StepValue;

/**
 * What a model says, whatever its instances are numbered and in whatever order they stand: a server
 * that was started again writes the same revision otherwise.
 */
final class Contents {
  /** Stands for an instance that refers to itself in a circle, which no sound model has. */
  private static final String CIRCLE = "circle";

  private final StepFile file;
  private final Map<Long, String> told = new HashMap<>();

  private Contents(StepFile file) {
    this.file = file;
  }

  /** The SHA-256 of all that a model's instances say; the header is left out. */
  static String of(byte[] model) {
    return new Contents(StepFile.of(model, "model")).all();
  }

  private String all() {
    List<String> each = new ArrayList<>();
    for (int i = 0; i < file.count(); i++) {
      each.add(of(file.decode(i)));
    }
    Collections.sort(each);
    return hash(String.join("\n", each));
  }

  private String of(StepInstance instance) {
    String known = told.putIfAbsent(instance.id(), CIRCLE);
    if (known != null) {
      return known;
    }
    String hash = hash(said(instance, instance));
    told.put(instance.id(), hash);
    return hash;
  }

  private String said(StepInstance owner, StepInstance part) {
    List<String> values = new ArrayList<>();
    part.values().forEach(v -> values.add(said(owner, v)));
    part.parts().forEach(p -> values.add(said(owner, p)));
    return part.keyword() + values;
  }

  private String said(StepInstance owner, StepValue value) {
    if (value instanceof StepValue.Reference r) {
      return of(owner.resolve(r.id()));
    } else if (value instanceof StepValue.ListOf list) {
      return list.values().stream().map(v -> said(owner, v)).toList().toString();
    } else if (value instanceof StepValue.Typed typed) {
      return typed.keyword() + "(" + said(owner, typed.value()) + ")";
    } else if (value instanceof StepValue.Numeral number) {
      return Double.toString(number.value());
    }
    return value.toString();
  }

  private static String hash(String text) {
    return Sha256.hex(text.getBytes(StandardCharsets.UTF_8));
  }
}

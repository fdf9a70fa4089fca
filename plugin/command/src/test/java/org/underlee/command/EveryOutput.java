package org.underlee.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Makes every kind of file that the verbs write, of one sample, in a process of its own. */
final class EveryOutput {
  /** Each in the folder that {@code @} stands for. */
  private static final List<String> RUNS =
      List.of(
          "survey @deck.ifc",
          "survey @deck.ifc --json --out @survey.json --picture @survey.svg",
          "design @deck.ifc --out @drained.ifc --picture @below.png",
          "design @deck.ifc --json --out @metric.ifc --units metric --kit ribbed-sheet",
          "design @deck.ifc --checklist --units metric --out @other.ifc",
          "design @deck.ifc --explain F1-B6-P2",
          "compare @deck.ifc",
          "compare @deck.ifc --json",
          "takeoff @deck.ifc --out @bill.csv",
          "takeoff @deck.ifc --out @bill.xlsx",
          "takeoff @deck.ifc --out @bill.json",
          "check @drained.ifc",
          "check @drained.ifc --json --services @services.ifc --issues @issues.json --bcf"
              + " @issues.bcf --sarif @issues.sarif --csv @issues.csv",
          "packet @deck.ifc --out @packet",
          "packet @deck.ifc --out @paquete --lang es --units metric --paper A3",
          "resync @deck.ifc --from @drained.ifc --out @resynced.ifc",
          "batch survey @jobs",
          "batch survey @jobs --summary @summary.html",
          "batch design @jobs --out @copies --summary @summary.json",
          "strip @drained.ifc --out @stripped.ifc");

  private EveryOutput() {}

  /** Writes into the folder, and what was printed into {@code printed.txt} there. */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[0]);
    StringWriter printed = new StringWriter();
    for (String run : RUNS) {
      List<String> words = new ArrayList<>();
      for (String word : run.split(" ")) {
        words.add(word.startsWith("@") ? folder.resolve(word.substring(1)).toString() : word);
      }
      PrintWriter out = new PrintWriter(printed);
      // The progress of many models at once tells which was ready first.
      boolean many = run.startsWith("batch");
      PrintWriter err = many ? new PrintWriter(Writer.nullWriter()) : out;
      int code = Underlee.run(out, err, words.toArray(String[]::new));
      out.println(run + ": " + code);
      out.flush();
    }
    Files.writeString(
        folder.resolve("printed.txt"), printed.toString().replace(folder.toString(), "@"));
  }
}

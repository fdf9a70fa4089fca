package org.underlee.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.underlee.finding.InputException;
import org.underlee.run.Version;
import org.underlee.writeback.NotWrittenException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExecutionException;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;

/** The program's entry: help, and what each failure ends with; {@link EveryVerb} adds the verbs. */
@Command(
    name = "underlee",
    description = "Keeps the space under a deck dry, from the building model.",
    mixinStandardHelpOptions = true,
    versionProvider = Underlee.VersionText.class)
public class Underlee {

  static final class VersionText implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {
        "underlee " + Version.number() + ", built from " + Version.builtFrom(),
        "Java "
            + Runtime.version()
            + ", "
            + System.getProperty("os.name")
            + " "
            + System.getProperty("os.arch")
      };
    }
  }

  Underlee() {}

  /** Runs one verb and ends with its exit code. */
  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(run(out, err, args));
  }

  static int run(PrintWriter out, PrintWriter err, String... args) {
    if (HelpText.isAskedBy(args)) {
      HelpText.print(out, Ansi.AUTO.enabled());
      return printed(out, err, ExitCode.CLEAN);
    }
    String[] words = overFolders(args);
    CommandLine line = EveryVerb.neededFor(words);
    line.setOut(out);
    line.setErr(err);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(Underlee::failed);
    line.setExecutionStrategy(Underlee::execute);
    line.setParameterExceptionHandler((e, given) -> Misuse.told(e));
    int code = executed(line, words);
    err.flush();
    return printed(out, err, code);
  }

  private static int printed(PrintWriter out, PrintWriter err, int code) {
    if (out.checkError()) {
      err.println("What was to be printed could not be written to its end.");
      return ExitCode.NOT_WRITTEN;
    }
    return code;
  }

  private static int executed(CommandLine line, String... args) {
    try {
      return args.length == 0 ? help(line) : line.execute(args);
    } catch (OutOfMemoryError e) {
      line.getErr().println("The model needs more memory than Java was given.");
      line.getErr().println("Run java with more, such as -Xmx4g, or give a smaller model.");
      return ExitCode.INPUT;
    } catch (StackOverflowError e) {
      return bug(e, line);
    }
  }

  /** Every verb is run by this, so that none can forget what the run reads. */
  private static int execute(ParseResult parsed) {
    ParseResult last = parsed;
    while (last.hasSubcommand()) {
      last = last.subcommand();
    }
    try {
      if (!last.isUsageHelpRequested()) {
        RunFiles.requireApart(last);
      }
    } catch (NotWrittenException e) {
      throw new ExecutionException(last.commandSpec().commandLine(), e.getMessage(), e);
    }
    return new RunLast().execute(parsed);
  }

  /** A verb that {@code batch} knows, where folders follow it, is for every model in them. */
  private static String[] overFolders(String... args) {
    boolean folder = args.length > 1 && Files.isDirectory(Path.of(args[1]));
    return folder && BatchCommand.knows(args[0])
        ? Stream.concat(Stream.of("batch"), Arrays.stream(args)).toArray(String[]::new)
        : args;
  }

  private static int help(CommandLine line) {
    line.usage(line.getErr());
    return ExitCode.USAGE;
  }

  private static int failed(Exception e, CommandLine line, ParseResult parsed) {
    PrintWriter err = line.getErr();
    if (e instanceof InputException input) {
      err.println(input.getMessage());
      err.println(input.advice());
      return ExitCode.INPUT;
    }
    if (e instanceof NotWrittenException save) {
      err.println(save.getMessage());
      err.println(save.advice());
      return ExitCode.NOT_WRITTEN;
    }
    return bug(e, line);
  }

  private static int bug(Throwable e, CommandLine line) {
    line.getErr()
        .println("This is a fault in the program, not in your file. Please report it with:");
    e.printStackTrace(line.getErr());
    return ExitCode.BUG;
  }
}

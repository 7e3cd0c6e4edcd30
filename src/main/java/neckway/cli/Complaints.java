package neckway.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.file.WriteFault;
import neckway.neck.BadInput;
import neckway.words.Wording;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is said when a command cannot do its work, and the exit status that goes with it. */
final class Complaints {
  /** Unusable arguments or files. */
  static final int UNUSABLE = 2;

  /** A fault of the program. */
  static final int FAULT = 1;

  /** As shells report a program that its reader's end has ended: 128 and SIGPIPE's 13 (POSIX). */
  static final int READER_LEFT = 141;

  private static final Pattern CHOICE =
      Pattern.compile(
          "Invalid value for option '([^']+)': expected one of \\[(.*)] .*but was '(.*)'");
  private static final Pattern NUMBER =
      Pattern.compile("Invalid value for option '([^']+)': '(.*)' is not an? (double|int|long)");
  private static final Pattern VALUE =
      Pattern.compile(
          "Invalid value for (?:option '([^']+)'.*?|positional parameter[^(]*\\((\\w+)\\)): (.*; .*)");
  private static final Pattern MISSING =
      Pattern.compile("Missing required (?:parameter|option): '([^']+)'");

  /** What the option library says of these is said in its words, in each language. */
  private static final Map<String, Pattern> READ_OTHERWISE =
      Map.of(
          "options.read.flag",
          Pattern.compile("^Invalid value for option '([^']+)': '(.*)' is not a boolean$"),
          "options.read.noValue",
          Pattern.compile("^Missing required parameter for option '([^']+)' \\((.*)\\)$"),
          "options.read.optionForValue",
          Pattern.compile("^Expected parameter for option '([^']+)' but found '(.*)'$"),
          "options.read.twice",
          Pattern.compile("^option '([^']+)'(.*) should be specified only once$"),
          "options.read.several",
          Pattern.compile("^Missing required options and parameters: (.*), ('[^']*')$"));

  private Complaints() {}

  /** An option or argument that cannot be read: one line, and where help is. */
  static int aboutArguments(ParameterException problem, String[] args) {
    CommandLine line = problem.getCommandLine();
    if (cause(problem) instanceof BadInput bad) {
      return unusable(line, bad);
    }
    String what = what(problem);
    String how = what.endsWith(".") ? "options.help.next" : "options.help.same";
    String command = line.getCommandSpec().qualifiedName();
    line.getErr().println("neckway: " + Wording.of(how, what, command));
    return UNUSABLE;
  }

  /** Something thrown by a running command. */
  static int whileRunning(Exception problem, CommandLine line, ParseResult parsed) {
    if (problem instanceof BadInput bad) {
      return unusable(line, bad);
    }
    return fault(line.getErr(), problem);
  }

  /** What nobody foresaw. */
  static int fault(PrintWriter err, Exception problem) {
    err.println("neckway: " + Wording.of("options.fault", problem));
    problem.printStackTrace(err);
    return FAULT;
  }

  /**
   * Words or JSON that did not all reach standard output: one line, but none where a pipe's reader
   * wanted no more.
   *
   * @return the exit status; 0 where all went well
   */
  static int aboutOutput(StandardOutput output, PrintWriter err) {
    if (output.failure().isEmpty()) {
      return 0;
    }
    if (output.readerHasLeft()) {
      return READER_LEFT;
    }
    String why = WriteFault.words(output.failure().get());
    err.println("neckway: " + Wording.of("options.output", why));
    return UNUSABLE;
  }

  private static String what(ParameterException problem) {
    if (problem instanceof UnmatchedArgumentException stray && !stray.getUnmatched().isEmpty()) {
      String first = stray.getUnmatched().get(0);
      boolean option = first.startsWith("-");
      boolean command = !problem.getCommandLine().getSubcommands().isEmpty();
      String kind =
          option
              ? "options.unknown.option"
              : command ? "options.unknown.command" : "options.unknown.argument";
      return Wording.of(kind, first);
    }
    return plain(problem.getMessage().replaceAll("\\s*\\R\\s*", " ").strip());
  }

  /** The option library's words for values of the wrong kind, said as the rest is said. */
  private static String plain(String message) {
    Matcher missing = MISSING.matcher(message);
    if (missing.matches()) {
      return Wording.of("options.missing", missing.group(1).replace('=', ' '));
    }
    Matcher value = VALUE.matcher(message);
    if (value.matches()) {
      String name = value.group(1) == null ? value.group(2) : value.group(1);
      return name + ": " + value.group(3);
    }
    Matcher choice = CHOICE.matcher(message);
    if (choice.matches()) {
      String names = either(choice.group(2).toLowerCase(Locale.ROOT));
      return Wording.of("options.choice", choice.group(1), choice.group(3), names);
    }
    Matcher number = NUMBER.matcher(message);
    if (number.matches()) {
      String kind =
          number.group(3).equals("double") ? "options.number.any" : "options.number.whole";
      return Wording.of(kind, number.group(1), number.group(2));
    }
    return READ_OTHERWISE.entrySet().stream()
        .flatMap(
            each ->
                each.getValue()
                    .matcher(message)
                    .results()
                    .map(found -> Wording.of(each.getKey(), found.group(1), found.group(2))))
        .findFirst()
        .orElse(message);
  }

  /** Names with commas between, "or" before the last. */
  private static String either(String names) {
    int last = names.lastIndexOf(", ");
    return last < 0
        ? names
        : Wording.of("options.either", names.substring(0, last), names.substring(last + 2));
  }

  private static int unusable(CommandLine line, BadInput bad) {
    return unusable(line.getErr(), bad);
  }

  /** Unusable files or a machine without what is needed. */
  static int unusable(PrintWriter err, BadInput bad) {
    err.println("neckway: " + bad.getMessage());
    return UNUSABLE;
  }

  private static Throwable cause(Throwable problem) {
    Throwable at = problem;
    while (at.getCause() != null && !(at instanceof BadInput)) {
      at = at.getCause();
    }
    return at;
  }
}

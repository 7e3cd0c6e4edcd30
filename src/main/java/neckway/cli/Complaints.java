package neckway.cli;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.neck.BadInput;
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

  private static final Pattern CHOICE =
      Pattern.compile(
          "Invalid value for option '([^']+)': expected one of \\[(.*)] .*but was '(.*)'");
  private static final Pattern NUMBER =
      Pattern.compile("Invalid value for option '([^']+)': '(.*)' is not an? (double|int|long)");

  private Complaints() {}

  /** An option or argument that cannot be read: one line, and where help is. */
  static int aboutArguments(ParameterException problem, String[] args) {
    CommandLine line = problem.getCommandLine();
    if (cause(problem) instanceof BadInput bad) {
      return unusable(line, bad);
    }
    String what = what(problem);
    String end = what.endsWith(".") ? " " : "; ";
    String command = line.getCommandSpec().qualifiedName();
    line.getErr()
        .println("neckway: " + what + end + "'" + command + " --help' lists what it takes");
    return UNUSABLE;
  }

  /** Something thrown by a running command. */
  static int whileRunning(Exception problem, CommandLine line, ParseResult parsed) {
    if (problem instanceof BadInput bad) {
      return unusable(line, bad);
    }
    line.getErr().println("neckway: a fault of the program, not of what you gave it: " + problem);
    problem.printStackTrace(line.getErr());
    return FAULT;
  }

  private static String what(ParameterException problem) {
    if (problem instanceof UnmatchedArgumentException stray && !stray.getUnmatched().isEmpty()) {
      String first = stray.getUnmatched().get(0);
      boolean option = first.startsWith("-");
      boolean command = !problem.getCommandLine().getSubcommands().isEmpty();
      String kind = option ? "option" : command ? "command" : "argument";
      return "unknown " + kind + " \"" + first + "\"";
    }
    return plain(problem.getMessage().replaceAll("\\s*\\R\\s*", " ").strip());
  }

  /** The option library's words for values of the wrong kind, said as the rest is said. */
  private static String plain(String message) {
    Matcher choice = CHOICE.matcher(message);
    if (choice.matches()) {
      String names = choice.group(2).toLowerCase(Locale.ROOT).replaceFirst(", ([^,]*)$", " or $1");
      return choice.group(1) + " " + choice.group(3) + ": give " + names;
    }
    Matcher number = NUMBER.matcher(message);
    if (number.matches()) {
      String kind = number.group(3).equals("double") ? "a number" : "a whole number";
      return number.group(1) + " " + number.group(2) + ": give " + kind;
    }
    return message;
  }

  private static int unusable(CommandLine line, BadInput bad) {
    line.getErr().println("neckway: " + bad.getMessage());
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

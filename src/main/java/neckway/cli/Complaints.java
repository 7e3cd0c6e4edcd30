package neckway.cli;

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
    return problem.getMessage().replaceAll("\\s*\\R\\s*", " ").strip();
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

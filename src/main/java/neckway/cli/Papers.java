package neckway.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * Writes what an installer puts beside the program, from the options as they are: the manual page
 * (section 1, in the macros of man(7)) and the completion for bash.
 */
public final class Papers {
  private Papers() {}

  /**
   * Writes {@code neckway.1} and {@code neckway.bash}.
   *
   * @param args the folder to write into; made if it is not there
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    CommandLine program = Main.commandLine();
    Files.writeString(folder.resolve("neckway.1"), manual(program), StandardCharsets.UTF_8);
    Files.writeString(
        folder.resolve("neckway.bash"),
        AutoComplete.bash("neckway", program).replaceAll("(?m)^# Date: .*\\R", ""),
        StandardCharsets.UTF_8);
  }

  /** The manual page. */
  static String manual(CommandLine program) {
    CommandSpec spec = program.getCommandSpec();
    List<String> lines = new ArrayList<>();
    lines.add(".TH NECKWAY 1 \"\" \"" + version(spec) + "\" \"User Commands\"");
    lines.add(".SH NAME");
    lines.add("neckway \\- coach for moving between scale shapes on the guitar");
    lines.add(".SH SYNOPSIS");
    lines.add(".B neckway");
    lines.add("[\\fICOMMAND\\fR] [\\fIOPTIONS\\fR]");
    lines.add(".SH DESCRIPTION");
    lines.add(plain(spec.usageMessage().description()));
    lines.add(".PP");
    lines.add("Without a command the window opens.");
    lines.add(".SH COMMANDS");
    for (Map.Entry<String, CommandLine> each : program.getSubcommands().entrySet()) {
      command(lines, each.getKey(), each.getValue());
    }
    lines.add(".SH EXIT STATUS");
    lines.add(
        "0 done, whatever was played; 2 unusable arguments or files; 1 a fault of the program.");
    return String.join("\n", lines) + "\n";
  }

  private static String version(CommandSpec spec) {
    try {
      return escaped(String.join(" ", spec.versionProvider().getVersion()));
    } catch (Exception e) {
      throw new UncheckedIOException(new IOException("the version cannot be read", e));
    }
  }

  private static void command(List<String> lines, String name, CommandLine command) {
    CommandSpec spec = command.getCommandSpec();
    lines.add(".SS " + escaped(name));
    lines.add(plain(spec.usageMessage().description()));
    for (PositionalParamSpec each : spec.positionalParameters()) {
      argument(lines, "\\fI" + escaped(each.paramLabel()) + "\\fR", each);
    }
    for (OptionSpec each : spec.options()) {
      String label = each.arity().max() == 0 ? "" : " \\fI" + escaped(each.paramLabel()) + "\\fR";
      argument(lines, "\\fB" + escaped(String.join(", ", each.names())) + "\\fR" + label, each);
    }
    for (Map.Entry<String, CommandLine> each : command.getSubcommands().entrySet()) {
      command(lines, name + " " + each.getKey(), each.getValue());
    }
  }

  private static void argument(List<String> lines, String head, ArgSpec argument) {
    if (argument.hidden()) {
      return;
    }
    lines.add(".TP");
    lines.add(head);
    lines.add(plain(argument.description()));
  }

  private static String plain(String[] description) {
    String whole = String.join(" ", description).replace("%n", " ").replace("%%", "%");
    return escaped(Ansi.OFF.string(whole).strip());
  }

  /** As man(7) wants it: a hyphen that is meant stays one, and no line begins with a request. */
  private static String escaped(String text) {
    String whole = text.replace("\\", "\\e").replace("-", "\\-");
    return whole.startsWith(".") || whole.startsWith("'") ? "\\&" + whole : whole;
  }
}

package neckway.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.concurrent.Callable;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import neckway.neck.BadInput;
import neckway.words.Tongue;
import neckway.words.Wording;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.TypeConversionException;

/** The entry point: one class a command. */
@Command(
    name = "neckway",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      MapCommand.class,
      ListenCommand.class,
      ReviewCommand.class,
      CalibrateCommand.class,
      PerformCommand.class,
      TuneCommand.class,
      CompareCommand.class,
      ReportCommand.class,
      LogCommand.class,
      ReachCommand.class,
      PlanCommand.class,
      WarmUpCommand.class,
      VampCommand.class,
      SheetCommand.class,
      DeskCommand.class
    })
public final class Main implements Callable<Integer> {
  /** The JDK's synthesizer says there that it made a folder; held, since loggers are forgotten. */
  private static final Logger PREFERENCES = Logger.getLogger("java.util.prefs");

  private Main() {}

  /** Runs a command and ends with its exit status. */
  public static void main(String[] args) {
    // jFLAC prints there what it thinks of a frame, in the midst of what was asked for
    System.setOut(new PrintStream(OutputStream.nullOutputStream()));
    PREFERENCES.setLevel(Level.SEVERE);
    Wording.speak(Tongue.of(Locale.getDefault(Locale.Category.DISPLAY)));
    StandardOutput standard = new StandardOutput(new FileOutputStream(FileDescriptor.out));
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int status =
        isWindowAlone(args)
            ? window(err, args)
            : run(new PrintWriter(standard, true, StandardCharsets.UTF_8), err, args);
    if (status == 0) {
      status = Complaints.aboutOutput(standard, err);
    }
    Interrupt.finished(status);
    Ending.with(status);
  }

  /** No word at all, or a drill's file that was opened with the program. */
  private static boolean isWindowAlone(String... args) {
    return args.length == 0 || args.length == 1 && args[0].endsWith(".drill.json");
  }

  /** The window alone; there is nothing to parse then, and the parser's model takes its time. */
  private static int window(PrintWriter err, String... drill) {
    try {
      DeskCommand.open(Stream.of(drill).map(Path::of).findFirst());
      return 0;
    } catch (BadInput e) {
      return Complaints.unusable(err, e);
    } catch (RuntimeException e) {
      return Complaints.fault(err, e);
    }
  }

  /**
   * Runs a command.
   *
   * @param out where its words go
   * @param err where complaints go
   * @return 0 done, 2 unusable arguments or files, 1 a fault of the program
   */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    CommandLine line = commandLine();
    line.setOut(out);
    line.setErr(err);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.registerConverter(Path.class, Main::path);
    line.setParameterExceptionHandler(Complaints::aboutArguments);
    line.setExecutionExceptionHandler(Complaints::whileRunning);
    int status = line.execute(args);
    out.flush();
    err.flush();
    return status;
  }

  /** All commands with their options, described in the language that is spoken here and now. */
  static CommandLine commandLine() {
    CommandLine line = new CommandLine(new Main());
    return line.setResourceBundle(
        ResourceBundle.getBundle(
            "neckway.cli.help",
            Wording.tongue().locale(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES)));
  }

  private static Path path(String name) {
    if (name.isBlank()) {
      throw new TypeConversionException(Wording.of("options.path.none"));
    }
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw new TypeConversionException(Wording.of("options.path.unreadable"));
    }
  }

  /** No command was named: opens the window. */
  @Override
  public Integer call() {
    DeskCommand.open(Optional.empty());
    return 0;
  }
}

package neckway.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import neckway.Await;
import org.junit.jupiter.api.Assumptions;

/**
 * A microphone and a loudspeaker without a sound card: a PulseAudio server of our own with two null
 * sinks (Debian packages pulseaudio, pulseaudio-utils, libasound2-plugins). What is played into
 * "mic" is what Java Sound captures. Where it cannot be had, the test is skipped and says so.
 */
public final class VirtualSound implements AutoCloseable {
  private static final List<String> NEEDED = List.of("pulseaudio", "pactl", "pacat", "paplay");

  /** Longest life of a program of ours under test; a hang must not stall the build. */
  public static final int PROGRAM_SECONDS = 40;

  /** Longest life of the server and of what plays into it. */
  private static final int SERVER_SECONDS = 240;

  /** How long a busy machine may take until the server, or a program at it, is ready. */
  private static final double START_SECONDS = 30;

  private static final int ANSWER_SECONDS = 10;

  /** Streams of silence that play all the time, one into each device. */
  private static final int KEPT_ALIVE = 2;

  /**
   * What puts a program before all others where that is allowed: sound has to be there in time,
   * whatever else the machine does. Empty where it is not.
   */
  private static final List<String> BEFORE_OTHERS = beforeOthers();

  private final Path folder;
  private final int programSeconds;
  private final int serverSeconds;
  private Process server;
  private final List<Process> processes = new CopyOnWriteArrayList<>();
  private final List<Process> overdue = new CopyOnWriteArrayList<>();
  private final ScheduledExecutorService limits =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "limits");
            thread.setDaemon(true);
            return thread;
          });

  /** Starts the server in an empty folder. */
  public VirtualSound(Path parent) throws Exception {
    this(parent, PROGRAM_SECONDS, SERVER_SECONDS);
  }

  /**
   * Starts the server in an empty folder.
   *
   * @param programSeconds longest life of a program of ours that is started here
   * @param serverSeconds longest life of the server and of what plays into it
   */
  public VirtualSound(Path parent, int programSeconds, int serverSeconds) throws Exception {
    this.programSeconds = programSeconds;
    this.serverSeconds = serverSeconds;
    for (String program : NEEDED) {
      boolean there =
          List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
              .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
      Assumptions.assumeTrue(there, program + " is not installed: live listening is not checked");
    }
    Assumptions.assumeTrue(
        Files.exists(Path.of("/usr/share/alsa/alsa.conf.d/50-pulseaudio.conf")),
        "libasound2-plugins is not installed: live listening is not checked");
    folder =
        Files.createTempDirectory(
            parent,
            "pulse",
            PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    startServer();
  }

  private static List<String> beforeOthers() {
    List<String> nice = List.of("nice", "-n", "-20");
    List<String> trial = new ArrayList<>(nice);
    trial.add("true");
    try {
      Process process = new ProcessBuilder(trial).redirectErrorStream(true).start();
      // where it is not allowed, it says so and goes on
      boolean silent = process.getInputStream().readAllBytes().length == 0;
      return process.waitFor() == 0 && silent ? nice : List.of();
    } catch (IOException e) {
      return List.of();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return List.of();
    }
  }

  private void startServer() throws Exception {
    String sink = "module-null-sink rate=48000 channels=2 format=s16le sink_name=";
    server =
        start(
            "pulseaudio",
            "-n",
            "--daemonize=no",
            "--exit-idle-time=-1",
            "-L",
            "module-native-protocol-unix auth-anonymous=1 socket=" + folder.resolve("native"),
            "-L",
            sink + "speaker",
            "-L",
            sink + "mic");
    try {
      Await.until("the sound server answers", START_SECONDS, () -> ask("info").isPresent());
      tell("set-default-sink", "speaker");
      tell("set-default-source", "mic.monitor");
      for (String to : List.of("speaker", "mic")) {
        // an idle null sink stalls the first block played into it
        keepAlive(to);
      }
      Await.until(
          "both devices run", START_SECONDS, () -> count("RUNNING", "list", "short", "sinks") == 2);
    } catch (Exception | AssertionError e) {
      close();
      throw e;
    }
  }

  /** Waits until some program listens to an input. */
  public void awaitListening() throws Exception {
    Await.until(
        "a program listens",
        START_SECONDS,
        () -> count("Corked: no", "list", "source-outputs") > 0);
  }

  /** Waits until some program both listens to an input and plays. */
  public void awaitListeningAndPlaying() throws Exception {
    awaitListening();
    Await.until(
        "a program plays",
        START_SECONDS,
        () -> count("Corked: no", "list", "sink-inputs") > KEPT_ALIVE);
  }

  /** Waits until what was played has ended, and whoever played or listened has left. */
  public void awaitSilence() throws Exception {
    Await.until(
        "all that was played has ended",
        START_SECONDS,
        () ->
            count("Corked:", "list", "sink-inputs") == KEPT_ALIVE
                && count("Corked:", "list", "source-outputs") == 0);
  }

  private void tell(String... words) throws IOException, InterruptedException {
    if (ask(words).isEmpty()) {
      throw new IOException("pactl " + String.join(" ", words) + " did not end well");
    }
  }

  private long count(String what, String... question) throws IOException, InterruptedException {
    return ask(question).orElse("").lines().filter(line -> line.contains(what)).count();
  }

  /** What the server answers through pactl; empty where it does not. */
  private Optional<String> ask(String... words) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("pactl"));
    command.addAll(List.of(words));
    ProcessBuilder builder = atServer(Map.of(), command);
    Path answer = folder.resolve("answer");
    Process process =
        builder
            .redirectOutput(answer.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    if (!process.waitFor(ANSWER_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      return Optional.empty();
    }
    return process.exitValue() == 0 ? Optional.of(Files.readString(answer)) : Optional.empty();
  }

  private void keepAlive(String sink) throws IOException {
    start(
        "pacat",
        "-d",
        sink,
        "--latency-msec=10",
        "--raw",
        "--rate=48000",
        "--channels=1",
        "--format=s16le",
        "/dev/zero");
  }

  /** Starts a program that finds this server. */
  public Process start(String... command) throws IOException {
    return start(Map.of(), command);
  }

  /** Starts a program that finds this server, with more in its environment. */
  public Process start(Map<String, String> more, String... command) throws IOException {
    List<String> words = new ArrayList<>(BEFORE_OTHERS);
    words.addAll(List.of(command));
    ProcessBuilder builder = atServer(more, words);
    builder.redirectError(folder.resolve("errors-" + processes.size()).toFile());
    if (!command[0].endsWith("java")) {
      builder.redirectOutput(ProcessBuilder.Redirect.DISCARD);
    }
    Process process = builder.start();
    processes.add(process);
    int seconds = command[0].endsWith("java") ? programSeconds : serverSeconds;
    limits.schedule(() -> endOverdue(process), seconds, TimeUnit.SECONDS);
    return process;
  }

  private ProcessBuilder atServer(Map<String, String> more, List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command);
    Map<String, String> environment = builder.environment();
    environment.put("PULSE_RUNTIME_PATH", folder.toString());
    environment.put("PULSE_STATE_PATH", folder.toString());
    environment.put("PULSE_SERVER", "unix:" + folder.resolve("native"));
    environment.put("HOME", folder.toString());
    environment.put("XDG_CONFIG_HOME", folder.toString());
    environment.put("XDG_DATA_HOME", folder.resolve("data").toString());
    environment.putAll(more);
    return builder;
  }

  private void endOverdue(Process process) {
    if (process.isAlive()) {
      overdue.add(process);
      process.destroyForcibly();
    }
  }

  /** Whether a program did not end in its time and was ended by force. */
  public boolean overdue(Process process) {
    return overdue.contains(process);
  }

  /** Starts a class of this project in a virtual machine of its own. */
  public Process java(Map<String, String> more, String mainClass, String... args)
      throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-cp");
    command.add(
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
    command.add(mainClass);
    command.addAll(List.of(args));
    return start(more, command.toArray(new String[0]));
  }

  /** What a program wrote to its standard error. */
  public String errorsOf(Process process) throws IOException {
    return Files.readString(folder.resolve("errors-" + processes.indexOf(process)));
  }

  /** Plays a file into the microphone. */
  public Process playIntoMicrophone(Path take) throws IOException {
    return start("paplay", "-d", "mic", take.toString());
  }

  /** Where programs started here keep their settings. */
  public Path settings() {
    return folder.resolve("neckway");
  }

  /** Ends the server at once, as if the device were pulled out. */
  public void pullOut() {
    server.destroyForcibly();
  }

  /** Starts a new server in the place of one that was ended. */
  public void putBack() throws Exception {
    server.waitFor();
    Files.deleteIfExists(folder.resolve("native"));
    Files.deleteIfExists(folder.resolve("pid"));
    startServer();
  }

  /** Stops the server without ending it: from now on it neither answers nor hangs up. */
  public void hang() throws IOException, InterruptedException {
    start("kill", "-STOP", Long.toString(server.pid())).waitFor(5, TimeUnit.SECONDS);
  }

  @Override
  public void close() {
    limits.shutdownNow();
    processes.forEach(Process::destroyForcibly);
    try {
      for (Process process : processes) {
        process.waitFor(3, TimeUnit.SECONDS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

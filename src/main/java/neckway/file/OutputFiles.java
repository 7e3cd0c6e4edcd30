package neckway.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * What one call reads and writes, checked before its work begins. Nothing is written over what is
 * read or over another output, by whatever way a file is named; and an older file of another kind
 * is replaced only where that was asked for.
 */
public final class OutputFiles {
  /** What every report has near its beginning, so that it is known for one. */
  public static final String REPORT_MARK = "content=\"Neckway report\"";

  /** What is written. */
  public enum Kind {
    /** A sound file. */
    WAV("wav", ""),
    /** A drill. */
    DRILL("drill", "neckway-drill/"),
    /** A guitar's profile. */
    GUITAR("guitar", "neckway-guitar/"),
    /** A review, or the truth of a performed take. */
    REVIEW("review", "neckway-review/"),
    /** A map of the neck. */
    MAP("map", "neckway-map/"),
    /** What is open. */
    REACH("reach", "neckway-reach/"),
    /** What to play next. */
    PLAN("plan", "neckway-plan/"),
    /** A list of runs. */
    LOG("log", "neckway-log/"),
    /** Takes side by side. */
    COMPARISON("comparison", "neckway-compare/"),
    /** A page in the Portable Document Format; ISO 32000-1, 7.5.2, says how it begins. */
    PDF("pdf", "%PDF-"),
    /** A picture; the PNG specification (W3C 2003), 5.2, says how it begins. */
    PNG("png", "\u0089PNG\r\n\u001a\n"),
    /** A Standard MIDI File (MIDI 1.0), which begins with its header chunk. */
    MIDI("midi", "MThd"),
    /** A score in MusicXML, uncompressed. */
    MUSICXML("musicXml", "<score-partwise"),
    /** A drill as plain text. */
    SHEET_TEXT("sheetText", ""),
    /** A report to hand back. */
    REPORT("report", REPORT_MARK);

    private final String key;
    private final String format;

    Kind(String key, String format) {
      this.key = key;
      this.format = format;
    }

    /** Says that a file is of another kind: "no drill". */
    private String denied() {
      return Wording.of("files.output.no." + key);
    }

    private boolean isIn(Path file) throws IOException {
      return switch (this) {
        case WAV -> isWav(file);
        case PDF, PNG, MIDI -> head(file, format.length()).equals(format);
        case SHEET_TEXT -> Wording.begins(firstWords(file), "files.sheet.title");
        case MUSICXML -> head(file, MUSICXML_HEAD_BYTES).contains(format);
        case REPORT -> head(file, REPORT_HEAD_BYTES).contains(format);
        default -> isJson(file);
      };
    }

    private static String head(Path file, int bytes) throws IOException {
      try (InputStream in = Files.newInputStream(file)) {
        return new String(in.readNBytes(bytes), StandardCharsets.ISO_8859_1);
      }
    }

    /** Words may be in any language. */
    private static String firstWords(Path file) throws IOException {
      return new String(
          head(file, SHEET_HEAD_BYTES).getBytes(StandardCharsets.ISO_8859_1),
          StandardCharsets.UTF_8);
    }

    /** RIFF or RF64 and WAVE, as the Multimedia Programming Interface 1.0 (1991) has them. */
    private static boolean isWav(Path file) throws IOException {
      return head(file, WAV_HEAD_BYTES).matches("(?s)(RIFF|RF64).{4}WAVE");
    }

    private boolean isJson(Path file) {
      try {
        JsonNode read = JsonFile.read(file);
        JsonNode given = (read.isArray() ? read.path(0) : read).path("format");
        return given.isTextual() && given.textValue().startsWith(format);
      } catch (BadInput noJson) {
        return false;
      }
    }
  }

  private static final int WAV_HEAD_BYTES = 12;

  /** Declaration, document type and comments stand before a score's first element. */
  private static final int MUSICXML_HEAD_BYTES = 2000;

  private static final int REPORT_HEAD_BYTES = 512;
  private static final int SHEET_HEAD_BYTES = 64;
  private static final String WAV_SUFFIX = ".wav";
  private static final Path STANDARD_OUTPUT = Path.of("-");

  private record Named(String name, Path file) {
    private String shown() {
      return name.isEmpty() ? file.toString() : name + " " + file;
    }
  }

  private final boolean overwrite;
  private final boolean canOverwrite;
  private final List<Named> taken = new ArrayList<>();

  private OutputFiles(boolean overwrite, boolean canOverwrite) {
    this.overwrite = overwrite;
    this.canOverwrite = canOverwrite;
  }

  /**
   * Those of a command.
   *
   * @param overwrite whether older files of another kind are to be replaced
   */
  public static OutputFiles ofCommand(boolean overwrite) {
    return new OutputFiles(overwrite, true);
  }

  /**
   * Sees that the window may write a file.
   *
   * @throws BadInput where it must not or cannot; the line says why
   */
  public static void check(Path file, Kind kind) {
    new OutputFiles(false, false).writes("", Optional.of(file), kind);
  }

  /**
   * Names a file that is read.
   *
   * @param name the option or the parameter, as complaints name it
   */
  public OutputFiles reads(String name, Optional<Path> file) {
    file.ifPresent(f -> taken.add(new Named(name, f)));
    return this;
  }

  /**
   * Names a file that is written, after all that are read.
   *
   * @throws BadInput where it must not or cannot be written; the line says why
   */
  public OutputFiles writes(String name, Optional<Path> file, Kind kind) {
    file.ifPresent(f -> check(new Named(name, f), kind));
    return this;
  }

  private void check(Named output, Kind kind) {
    Path file = output.file();
    if (file.toString().isBlank()) {
      throw new BadInput(Wording.of("files.output.noName", output.name()));
    }
    if (file.equals(STANDARD_OUTPUT)) {
      throw new BadInput(Wording.of("files.output.standardOutput", output.shown()));
    }
    if (kind == Kind.WAV) {
      checkWavName(output);
    }
    if (kind == Kind.REPORT) {
      checkReportName(output);
    }
    boolean device = Files.exists(file) && !Files.isRegularFile(file);
    for (Named other : taken) {
      if (!device && isSame(file, other.file())) {
        throw new BadInput(Wording.of("files.output.same", output.shown(), other.shown()));
      }
    }
    checkWritable(output);
    if (!overwrite) {
      checkKind(output, kind);
    }
    taken.add(output);
  }

  private static void checkWavName(Named output) {
    String name = String.valueOf(output.file().getFileName());
    if (name.toLowerCase(Locale.ROOT).endsWith(WAV_SUFFIX)) {
      return;
    }
    int dot = name.lastIndexOf('.');
    String stem = dot > 0 ? name.substring(0, dot) : name;
    throw new BadInput(Wording.of("files.output.wavName", output.shown(), stem + WAV_SUFFIX));
  }

  private static void checkReportName(Named output) {
    String name = String.valueOf(output.file().getFileName()).toLowerCase(Locale.ROOT);
    if (name.endsWith(".html") || name.endsWith(".htm")) {
      return;
    }
    throw new BadInput(Wording.of("files.output.reportName", output.shown()));
  }

  private static void checkWritable(Named output) {
    Path file = output.file().toAbsolutePath();
    if (Files.isDirectory(file)) {
      throw new BadInput(Wording.of("files.folder", output.shown()));
    }
    if (Files.exists(file)) {
      if (!Files.isWritable(file)) {
        throw new BadInput(Wording.of("files.readOnly", output.shown()));
      }
      if (!Files.isRegularFile(file)) {
        return;
      }
    }
    Path folder = real(file).getParent();
    if (folder == null || Files.notExists(folder)) {
      throw new BadInput(Wording.of("files.output.noFolder", output.shown()));
    }
    if (!Files.isDirectory(folder)) {
      throw new BadInput(Wording.of("files.output.notFolder", output.shown(), folder));
    }
    if (!Files.isWritable(folder)) {
      throw new BadInput(output.shown() + ": " + Wording.of("files.write.forbidden"));
    }
  }

  private void checkKind(Named output, Kind kind) {
    Path file = output.file();
    try {
      if (Files.isRegularFile(file) && Files.size(file) > 0 && !kind.isIn(file)) {
        throw new BadInput(
            Wording.of(
                canOverwrite ? "files.output.otherKind.overwrite" : "files.output.otherKind.usual",
                output.shown(),
                kind.denied()));
      }
    } catch (IOException e) {
      throw new BadInput(Wording.of("files.output.unread", output.shown()), e);
    }
  }

  private static boolean isSame(Path one, Path other) {
    try {
      if (Files.exists(one) && Files.exists(other)) {
        return Files.isSameFile(one, other);
      }
    } catch (IOException unreadable) {
      // by their names, then
    }
    return real(one).equals(real(other));
  }

  /** A file's own path, by whatever way it is named; as named where its folder cannot be read. */
  private static Path real(Path file) {
    Path path = file.toAbsolutePath().normalize();
    try {
      Path folder = path.getParent();
      if (Files.exists(path)) {
        return path.toRealPath();
      }
      return folder != null && Files.exists(folder)
          ? folder.toRealPath().resolve(path.getFileName())
          : path;
    } catch (IOException unreadable) {
      return path;
    }
  }
}

package neckway.folder;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import neckway.file.InputFile;
import neckway.file.sound.Channel;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * Which recordings there are: those in a folder, or those of a list. A list is a text of comma
 * separated values (RFC 4180) with a first line that names its columns: {@code file}, and as wanted
 * {@code drill}, {@code guitar}, {@code name}, {@code firstBeat}, {@code channel} and {@code when}.
 * Paths in it are relative to it.
 */
public final class TakeList {
  private static final Set<String> COLUMNS =
      Set.of("file", "drill", "guitar", "name", "firstBeat", "channel", "when");

  /** What recordings' names end in, read here or not: what is not read is told. */
  private static final Set<String> SOUNDS =
      Set.of(
          "wav", "wave", "aif", "aiff", "aifc", "au", "snd", "flac", "mp3", "ogg", "oga", "opus",
          "m4a", "mp4", "mov", "aac", "caf", "wma", "webm", "3gp", "amr");

  private TakeList() {}

  /**
   * The recordings in a folder, by name.
   *
   * @throws BadInput where there are none
   */
  public static List<TakeJob> ofFolder(Path folder, Channel channel) {
    try (Stream<Path> files = Files.list(folder)) {
      List<TakeJob> jobs =
          files
              .filter(file -> Files.isRegularFile(file) && isSound(file))
              .sorted()
              .map(file -> job(file, channel))
              .toList();
      if (jobs.isEmpty()) {
        throw new BadInput(Wording.of("machine.takes.none", folder));
      }
      return jobs;
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.folder.unread", folder), e);
    }
  }

  /** A recording of which no more is known. */
  public static TakeJob job(Path file, Channel channel) {
    return new TakeJob(
        file,
        Optional.empty(),
        Optional.empty(),
        stem(file),
        OptionalDouble.empty(),
        channel,
        Optional.empty());
  }

  private static boolean isSound(Path file) {
    String name = file.getFileName().toString();
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    return !name.startsWith(".") && SOUNDS.contains(ending);
  }

  /** A file's name without its ending. */
  static String stem(Path file) {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  /**
   * The recordings of a list, in its order.
   *
   * @param usual the channel of those whose line names none
   * @throws BadInput naming the line and the column
   */
  public static List<TakeJob> ofList(Path list, Channel usual) {
    InputFile.check(list);
    List<TakeJob> jobs = new ArrayList<>();
    int line = 1;
    for (Map<String, String> row : rows(list)) {
      line++;
      jobs.add(job(list, row, Wording.of("machine.line", list, line), usual));
    }
    if (jobs.isEmpty()) {
      throw new BadInput(Wording.of("machine.list.noTakes", list));
    }
    return jobs;
  }

  private static List<Map<String, String>> rows(Path list) {
    CsvMapper mapper = CsvMapper.builder().enable(CsvParser.Feature.TRIM_SPACES).build();
    mapper.enable(CsvParser.Feature.SKIP_EMPTY_LINES);
    CsvSchema header = CsvSchema.emptySchema().withHeader();
    try {
      String text = Files.readString(list, StandardCharsets.UTF_8).replaceFirst("^\uFEFF", "");
      if (text.isBlank()) {
        throw new BadInput(Wording.of("machine.list.empty", list));
      }
      try (MappingIterator<Map<String, String>> rows =
          mapper.readerForMapOf(String.class).with(header).readValues(text)) {
        checkColumns(list, ((CsvSchema) rows.getParserSchema()));
        return rows.readAll();
      }
    } catch (CharacterCodingException e) {
      throw new BadInput(Wording.of("machine.list.noText", list), e);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.list.noTable", list), e);
    }
  }

  private static void checkColumns(Path list, CsvSchema schema) {
    Set<String> unknown = new TreeSet<>();
    boolean file = false;
    for (CsvSchema.Column column : schema) {
      file |= column.getName().equals("file");
      if (!COLUMNS.contains(column.getName())) {
        unknown.add(column.getName());
      }
    }
    if (!file) {
      throw new BadInput(Wording.of("machine.list.noFile", list));
    }
    if (!unknown.isEmpty()) {
      throw new BadInput(Wording.of("machine.list.column", list, unknown.iterator().next()));
    }
  }

  private static TakeJob job(Path list, Map<String, String> row, String where, Channel usual) {
    Optional<String> file = cell(row, "file");
    if (file.isEmpty()) {
      throw new BadInput(Wording.of("machine.list.file", where));
    }
    Path take = list.toAbsolutePath().resolveSibling(file.get());
    return new TakeJob(
        take,
        cell(row, "drill").map(list.toAbsolutePath()::resolveSibling),
        cell(row, "guitar").map(list.toAbsolutePath()::resolveSibling),
        cell(row, "name").orElse(stem(take)),
        firstBeat(cell(row, "firstBeat"), where),
        cell(row, "channel").map(word -> channel(word, where)).orElse(usual),
        cell(row, "when"));
  }

  private static Optional<String> cell(Map<String, String> row, String column) {
    return Optional.ofNullable(row.get(column)).map(String::strip).filter(c -> !c.isEmpty());
  }

  private static OptionalDouble firstBeat(Optional<String> cell, String where) {
    if (cell.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double seconds = Double.parseDouble(cell.get());
      if (Double.isFinite(seconds)) {
        return OptionalDouble.of(seconds);
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw new BadInput(Wording.of("machine.list.firstBeat", where, cell.get()));
  }

  private static Channel channel(String word, String where) {
    return Arrays.stream(Channel.values())
        .filter(channel -> channel.name().equalsIgnoreCase(word))
        .findFirst()
        .orElseThrow(() -> new BadInput(Wording.of("machine.list.channel", where, word)));
  }
}

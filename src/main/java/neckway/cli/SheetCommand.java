package neckway.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import neckway.cli.option.DrillOptions;
import neckway.cli.option.HelpOption;
import neckway.cli.option.OverwriteOption;
import neckway.cli.text.SheetText;
import neckway.drill.PlayableDrill;
import neckway.file.AtomicFile;
import neckway.file.OutputFiles;
import neckway.neck.BadInput;
import neckway.sheet.MidiSheet;
import neckway.sheet.MusicXmlSheet;
import neckway.sheet.SheetPage;
import neckway.words.Wording;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes a drill on paper, or for other programs. */
@Command(name = "sheet", sortOptions = false)
final class SheetCommand implements Callable<Integer> {
  /** What can be written, by the ending of the file's name. */
  private enum Form {
    PDF(OutputFiles.Kind.PDF, SheetPage::pdf),
    PNG(OutputFiles.Kind.PNG, SheetPage::png),
    TXT(OutputFiles.Kind.SHEET_TEXT, SheetCommand::text),
    MID(OutputFiles.Kind.MIDI, MidiSheet::of),
    MUSICXML(OutputFiles.Kind.MUSICXML, MusicXmlSheet::of);

    private final OutputFiles.Kind kind;
    private final Function<PlayableDrill, byte[]> content;

    Form(OutputFiles.Kind kind, Function<PlayableDrill, byte[]> content) {
      this.kind = kind;
      this.content = content;
    }

    private static Form of(Path file) {
      String name = String.valueOf(file.getFileName()).toUpperCase(Locale.ROOT);
      return Arrays.stream(values())
          .filter(form -> name.endsWith("." + form.name()))
          .findFirst()
          .orElseThrow(() -> new BadInput(Wording.of("terminal.sheet.ending", file)));
    }
  }

  @Spec private CommandSpec spec;
  @Mixin private HelpOption help;
  @Mixin private DrillOptions drillOptions = new DrillOptions();

  @Option(names = "--out", paramLabel = "FILE", required = true)
  private Path out;

  @Mixin private OverwriteOption overwrite = new OverwriteOption();

  @Override
  public Integer call() {
    Form form = Form.of(out);
    overwrite
        .files()
        .reads("--drill", drillOptions.file())
        .writes("--out", Optional.of(out), form.kind);
    PlayableDrill drill = drillOptions.drill();
    AtomicFile.write(out, form.content.apply(drill));
    spec.commandLine().getOut().println(out + ": " + drill.spokenTitle());
    return 0;
  }

  private static byte[] text(PlayableDrill drill) {
    String text = String.join("\n", SheetText.of(drill)) + "\n";
    return text.getBytes(StandardCharsets.UTF_8);
  }
}

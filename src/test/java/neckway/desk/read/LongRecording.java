package neckway.desk.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import neckway.desk.DrillModel;
import neckway.drill.PlayableDrill;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;

/**
 * Reviews a long recording as one that is dropped on the window, and prints how much memory it
 * took: {@code LongRecording MINUTES FOLDER}. The virtual player practises in it, one take after
 * the other.
 */
public final class LongRecording {
  private LongRecording() {}

  public static void main(String[] args) throws IOException {
    double minutes = Double.parseDouble(args[0]);
    PlayableDrill drill = new DrillModel().drill();
    Path file = Path.of(args[1]).resolve("long.wav");
    write(file, drill, minutes);
    long start = System.nanoTime();
    Executor here = Runnable::run;
    long[] most = new long[1];
    RecordingModel model =
        new RecordingModel(
            here,
            here,
            take ->
                System.out.printf(
                    "%d notes; %s%n",
                    take.review().notes().size(), take.review().summary().words().get(0)),
            System.out::println);
    int[] tenths = new int[1];
    model
        .progress()
        .addListener(
            (o, before, now) -> {
              most[0] = Math.max(most[0], used());
              if ((int) (10 * now.doubleValue()) > tenths[0]) {
                tenths[0] = (int) (10 * now.doubleValue());
                System.gc();
                System.out.printf("%d0 %%: %d MB held%n", tenths[0], used() >> 20);
              }
            });
    model.start(file, drill, Optional.empty());
    System.out.printf(
        "%.0f min in %.1f s; at most %d MB used of %d MB%n",
        minutes,
        (System.nanoTime() - start) / 1e9,
        most[0] >> 20,
        Runtime.getRuntime().maxMemory() >> 20);
    Files.delete(file);
  }

  private static long used() {
    return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
  }

  private static void write(Path file, PlayableDrill drill, double minutes) {
    Performance take =
        new VirtualPlayer(PlayerSettings.plain()).play(drill.route(), drill.pulse(), List.of(), 8);
    float[] sound = take.samples();
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      long wanted = (long) (minutes * 60 * take.sampleRate());
      while (writer.frames() < wanted) {
        writer.write(sound, 0, sound.length);
      }
      writer.finish();
    }
  }
}

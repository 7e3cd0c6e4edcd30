package neckway.desk.sound;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import neckway.Await;
import neckway.desk.Desk;
import neckway.desk.sound.GuitarModel.Stage;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;

/**
 * The sound room on the devices of this machine, without a window: {@code trip} measures the round
 * trip, {@code gone} begins the plucks and says what comes in of a device that is pulled out then,
 * {@code plucks FILE} says "pluck" and learns the guitar from what it hears then.
 */
public final class RoomDriver {
  private static final double PATIENCE_SECONDS = 36;

  private final ExecutorService window = Executors.newSingleThreadExecutor();
  private final ExecutorService work = Executors.newSingleThreadExecutor();
  private SoundModel room;

  private RoomDriver() {}

  public static void main(String[] args) throws Exception {
    RoomDriver driver = new RoomDriver();
    driver.in(
        () -> {
          Desk desk = new Desk(SettingsFile.usual());
          driver.room =
              new SoundModel(
                  desk, new MachineDevices(), new RoundTripFile(), driver.work, driver.window);
          driver.room.shown();
          return null;
        });
    driver.until(() -> driver.room.inputs().size() > 1 && !driver.room.line().get().isEmpty());
    System.out.println(driver.in(() -> driver.room.inputs().size() + " inputs"));
    if (args[0].equals("trip")) {
      driver.trip();
    } else if (args[0].equals("gone")) {
      driver.gone();
    } else {
      driver.plucks(Path.of(args[1]));
    }
    Runtime.getRuntime().halt(0);
  }

  private <T> T in(Callable<T> task) throws Exception {
    return window.submit(task).get();
  }

  private void until(Callable<Boolean> there) throws Exception {
    // what there is instead is printed, and read by whoever waits for it
    Await.within(PATIENCE_SECONDS, () -> in(there));
  }

  private void trip() throws Exception {
    in(
        () -> {
          room.trip().measure();
          return null;
        });
    until(() -> !room.trip().measuring().get());
    System.out.println(in(() -> room.trip().result().get()));
    System.out.println(in(() -> room.trip().known().get()));
    until(() -> room.line().get().startsWith("Silent"));
    System.out.println(in(() -> room.line().get()));
  }

  private void gone() throws Exception {
    in(
        () -> {
          room.guitar().begin();
          return null;
        });
    System.out.println("pluck");
    until(() -> !room.inputTrouble().get().isEmpty());
    System.out.println(in(() -> room.inputTrouble().get()));
    System.out.println(in(() -> room.guitar().stage().get() + " " + room.guitar().next().get()));
  }

  private void plucks(Path file) throws Exception {
    in(
        () -> {
          room.guitar().begin();
          return null;
        });
    System.out.println("pluck");
    until(() -> room.guitar().stage().get() != Stage.PLUCKING);
    System.out.println(in(() -> room.guitar().stage().get() + " " + room.guitar().findings()));
    System.out.println(in(() -> room.guitar().count().get() + " " + room.guitar().next().get()));
    in(
        () -> {
          room.guitar().save(file);
          return null;
        });
    System.out.println("saved");
  }
}

package neckway.cli;

/**
 * Ends the program once everything is written. A sound library may hang even then, in what it does
 * when a program ends; so after a while the program is ended without asking it.
 */
final class Ending {
  private static final long PATIENCE_MILLIS = 3_000;

  private Ending() {}

  /** Does not come back. */
  static void with(int status) {
    Thread last =
        new Thread(
            () -> {
              try {
                Thread.sleep(PATIENCE_MILLIS);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              Runtime.getRuntime().halt(status);
            },
            "ending");
    last.setDaemon(true);
    last.start();
    System.exit(status);
  }
}

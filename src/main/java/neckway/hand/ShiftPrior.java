package neckway.hand;

/**
 * What is thought of a shift before anything is heard.
 *
 * @param planned that it is made where planned
 * @param missed that the hand stays
 */
record ShiftPrior(double planned, double missed) {
  /** Before a run: players mostly do what they set out to do. */
  static final ShiftPrior USUAL = new ShiftPrior(0.45, 0.12);

  /** That it is made on one given string. */
  double on(boolean plannedThere, int strings) {
    return plannedThere ? planned : (1 - planned - missed) / (strings - 1);
  }
}

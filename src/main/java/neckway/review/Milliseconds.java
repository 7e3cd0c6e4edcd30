package neckway.review;

/** Milliseconds as they are said and shown. */
public final class Milliseconds {
  private Milliseconds() {}

  /**
   * As one would say a wait, its sign kept: whole, to tens from a hundred up, to hundreds from a
   * second up.
   */
  public static long rounded(double ms) {
    double size = Math.abs(ms);
    long whole = size < 100 ? Math.round(size) : Math.round(size / 10) * 10;
    long said = whole < 1000 ? whole : Math.round(size / 100) * 100;
    return ms < 0 ? -said : said;
  }
}

package neckway.review.words;

/** Prints every sentence that a review can say, to be read aloud. */
public final class PrintedPhrasebook {
  private PrintedPhrasebook() {}

  public static void main(String[] args) {
    String before = "";
    for (Phrasebook.Example example : Phrasebook.examples()) {
      if (!example.when().equals(before)) {
        System.out.println(example.when() + ":");
        before = example.when();
      }
      System.out.println("    " + example.sentence());
    }
  }
}

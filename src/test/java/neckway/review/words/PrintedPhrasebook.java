package neckway.review.words;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Prints every sentence that a review can say, each with an example of when, as the page
 * docs/sentences.md.
 *
 * <pre>PrintedPhrasebook [FILE]</pre>
 */
public final class PrintedPhrasebook {
  private PrintedPhrasebook() {}

  public static void main(String[] args) throws Exception {
    if (args.length == 0) {
      System.out.print(page());
    } else {
      Files.writeString(Path.of(args[0]), page());
    }
  }

  /** The page. */
  static String page() {
    StringBuilder page =
        new StringBuilder(
            """
            # What a review says

            Every sentence that a review can say, each of an invented take. They come from the code that speaks of real takes. Written by

                mvn -q test-compile exec:java -Dexec.mainClass=neckway.review.words.PrintedPhrasebook -Dexec.args=docs/sentences.md

            | what happened | what is said |
            | --- | --- |
            """);
    String before = "";
    for (Phrasebook.Example example : Phrasebook.examples()) {
      boolean again = example.when().equals(before);
      page.append(again ? "| | " : "| " + example.when() + " | ")
          .append(example.sentence())
          .append(" |\n");
      before = example.when();
    }
    return page.toString();
  }
}

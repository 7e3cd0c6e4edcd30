package neckway.sheet;

import java.awt.Color;

/** What a sheet is drawn with: it is to be read from a printer without colour. */
enum Ink {
  BLACK(Color.BLACK),
  GREY(new Color(0x70, 0x70, 0x70)),
  SHADE(new Color(0xD0, 0xD0, 0xD0)),
  WHITE(Color.WHITE);

  private final Color colour;

  Ink(Color colour) {
    this.colour = colour;
  }

  Color colour() {
    return colour;
  }
}

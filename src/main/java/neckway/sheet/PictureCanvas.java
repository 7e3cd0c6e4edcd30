package neckway.sheet;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** A page as a picture, 150 dots an inch. */
final class PictureCanvas implements Canvas {
  private static final double DOTS_PER_POINT = 150.0 / 72;

  private final Letters letters = new Letters();
  private final Font font = letters.forPictures();
  private final BufferedImage image;
  private final Graphics2D graphics;

  PictureCanvas() {
    int width = (int) Math.round(WIDTH * DOTS_PER_POINT);
    int height = (int) Math.round(HEIGHT * DOTS_PER_POINT);
    image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
    graphics = image.createGraphics();
    graphics.setColor(Ink.WHITE.colour());
    graphics.fillRect(0, 0, width, height);
    graphics.scale(DOTS_PER_POINT, DOTS_PER_POINT);
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    graphics.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
  }

  @Override
  public void fill(Shape shape, Ink ink) {
    graphics.setColor(ink.colour());
    graphics.fill(shape);
  }

  @Override
  public void stroke(Shape shape, double width, Ink ink) {
    graphics.setColor(ink.colour());
    graphics.setStroke(new BasicStroke((float) width));
    graphics.draw(shape);
  }

  @Override
  public void text(String text, double x, double baseline, double size, Ink ink) {
    graphics.setColor(ink.colour());
    graphics.setFont(font.deriveFont((float) size));
    graphics.drawString(text, (float) x, (float) baseline);
  }

  @Override
  public Letters letters() {
    return letters;
  }

  /** The picture as a PNG file. */
  byte[] png() {
    graphics.dispose();
    ImageIO.setUseCache(false);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      if (!ImageIO.write(image, "png", bytes)) {
        throw new IllegalStateException("this Java cannot write PNG");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}

package neckway.desk;

import java.awt.image.BufferedImage;
import java.nio.file.Path;

/** How colours look to eyes without one kind of cone. */
public final class Eyes {
  /**
   * Colours as people without one kind of cone see them, linear RGB: Machado, Oliveira and
   * Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency", IEEE TVCG
   * 15 (2009), severity 1 (values from memory).
   */
  static final double[][] PROTANOPIA = {
    {0.152286, 1.052583, -0.204868},
    {0.114503, 0.786281, 0.099216},
    {-0.003882, -0.048116, 1.051998}
  };

  public static final double[][] DEUTERANOPIA = {
    {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
  };

  private Eyes() {}

  /** Writes a picture as it looks without the cones for red, and without those for green. */
  public static void save(BufferedImage picture, Path folder, String name) {
    FxWindow.save(seen(picture, PROTANOPIA), folder.resolve(name + "-protanopia.png"));
    FxWindow.save(seen(picture, DEUTERANOPIA), folder.resolve(name + "-deuteranopia.png"));
  }

  /** Linear light of an sRGB colour, 0 to 1 (IEC 61966-2-1). */
  static double[] linear(int rgb) {
    double[] linear = new double[3];
    for (int i = 0; i < 3; i++) {
      double c = (rgb >> (16 - 8 * i) & 255) / 255.0;
      linear[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
    return linear;
  }

  /** Linear light as it is seen. */
  static double[] seen(double[] c, double[][] eye) {
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = eye[i][0] * c[0] + eye[i][1] * c[1] + eye[i][2] * c[2];
      out[i] = Math.max(0, Math.min(1, out[i]));
    }
    return out;
  }

  /** A picture as it is seen. */
  public static BufferedImage seen(BufferedImage image, double[][] eye) {
    BufferedImage out =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        out.setRGB(x, y, rgb(seen(linear(image.getRGB(x, y)), eye)));
      }
    }
    return out;
  }

  private static int rgb(double[] linear) {
    int rgb = 0;
    for (double c : linear) {
      double s = c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
      rgb = rgb << 8 | (int) Math.round(255 * s);
    }
    return rgb;
  }
}

package net.sourceforge.jaad.aac.syntax;

/**
 * The powers of 4/3 with which AAC's numbers become spectral lines, in place of the decoder
 * library's own table: that lacks the last number, 8,191, so that loud frames could not be decoded.
 *
 * <p>Source: ISO/IEC 14496-3, 4.6.1 (inverse quantisation; the largest number is 8,191).
 */
interface IQTable {
  /** The power 4/3 of 0 to 8,191. */
  float[] IQ_TABLE = powers(8_192);

  private static float[] powers(int count) {
    float[] powers = new float[count];
    for (int i = 0; i < count; i++) {
      powers[i] = (float) Math.pow(i, 4 / 3.0);
    }
    return powers;
  }
}

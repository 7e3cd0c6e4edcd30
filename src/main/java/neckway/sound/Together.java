package neckway.sound;

/** Two sounds at once, cut off where they are more than full scale. For one thread. */
public final class Together implements PlayedSound {
  private final PlayedSound one;
  private final PlayedSound other;
  private float[] second = new float[0];

  public Together(PlayedSound one, PlayedSound other) {
    this.one = one;
    this.other = other;
  }

  @Override
  public void fill(long frame, float[] block) {
    if (second.length != block.length) {
      second = new float[block.length];
    }
    one.fill(frame, block);
    other.fill(frame, second);
    for (int i = 0; i < block.length; i++) {
      block[i] = Math.max(-1, Math.min(1, block[i] + second[i]));
    }
  }
}

package neckway.cli.option;

import neckway.file.sound.Channel;
import picocli.CommandLine.Option;

/** Which side of a recording is listened to. */
public final class ChannelOption {
  @Option(names = "--channel", paramLabel = "SIDE")
  private Channel channel = Channel.AUTO;

  public Channel channel() {
    return channel;
  }
}

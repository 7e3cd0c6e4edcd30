package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;

/**
 * Keeps what a transfer of runs tells.
 *
 * @param ids of runs that were stored
 * @param lines about what was unusable
 */
record KeptTold(List<String> ids, List<String> lines) implements RunTransfer.Listener {
  @Override
  public void stored(String id) {
    ids.add(id);
  }

  @Override
  public void unusable(String line) {
    lines.add(line);
  }

  @Override
  public void looked(long runs) {
    assertThat(runs).isPositive();
  }
}

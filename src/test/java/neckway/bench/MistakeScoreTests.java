package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class MistakeScoreTests {
  @Test
  void eachSayingIsUsedOnceAndInOrder() {
    assertThat(MistakeScore.inOrder(List.of(4, 5), List.of(4), 1)).isEqualTo(1);
    assertThat(MistakeScore.inOrder(List.of(4, 5), List.of(5, 6), 1)).isEqualTo(2);
    assertThat(MistakeScore.inOrder(List.of(9, 2), List.of(3, 11), 1)).isEqualTo(1);
    assertThat(MistakeScore.inOrder(List.of(9, 2), List.of(3, 11), 3)).isEqualTo(2);
    assertThat(MistakeScore.inOrder(List.of(), List.of(1), 1)).isZero();
  }
}

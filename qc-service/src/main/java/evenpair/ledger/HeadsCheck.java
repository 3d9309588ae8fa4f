package evenpair.ledger;

import java.util.HexFormat;
import java.util.Optional;

/** Holds what was witnessed outside the database against the blocks that stand in it. */
final class HeadsCheck {
  private static final HexFormat HEX = HexFormat.of();

  private final BlockTable blocks;

  HeadsCheck(BlockTable blocks) {
    this.blocks = blocks;
  }

  /**
   * @param witnessed the file of heads
   */
  Optional<LedgerCheck.Failure> file(HeadsFile.Witnessed witnessed) {
    long expected = 1;
    for (HeadsFile.Head head : witnessed.heads()) {
      if (head.number() != expected) {
        return failed(
            expected,
            "line %d of the file of heads is not the head of block %d"
                .formatted(expected, expected));
      }
      Optional<LedgerCheck.Failure> failure = line(head);
      if (failure.isPresent()) {
        return failure;
      }
      expected++;
    }
    return unfinished(expected, witnessed.unfinished());
  }

  /** A crash leaves the beginning of the next line; anything else was written by another hand. */
  private Optional<LedgerCheck.Failure> unfinished(long number, String rest) {
    boolean holds =
        rest.isEmpty()
            || blocks.find(number).filter(b -> HeadsFile.line(b).startsWith(rest)).isPresent();
    return holds
        ? Optional.empty()
        : failed(number, "the end of the file of heads is not the head of block " + number);
  }

  private Optional<LedgerCheck.Failure> line(HeadsFile.Head head) {
    Optional<Block> block = blocks.find(head.number());
    if (block.isEmpty()) {
      return failed(
          head.number(),
          "block %d was witnessed and is not in the database".formatted(head.number()));
    }
    return head.line().equals(HeadsFile.line(block.get()))
        ? Optional.empty()
        : failed(
            head.number(),
            "block %d is not the one that was witnessed in the file of heads"
                .formatted(head.number()));
  }

  /** A head that somebody keeps on paper. */
  Optional<LedgerCheck.Failure> printed(PrintedHead head) {
    Optional<Block> block = blocks.find(head.block());
    if (block.isEmpty()) {
      return failed(
          head.block(),
          "block %d was printed and is not in the database: the newest records were removed"
              .formatted(head.block()));
    }
    return HEX.formatHex(block.get().digest()).startsWith(head.digest())
        ? Optional.empty()
        : failed(head.block(), "block %d is not the one that was printed".formatted(head.block()));
  }

  private static Optional<LedgerCheck.Failure> failed(long block, String problem) {
    return Optional.of(new LedgerCheck.Failure(block, null, problem));
  }
}

package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Everything the backward pass needs of a forward pass, block by block. About 2 kB a block, 70 MB
 * an hour.
 */
public final class BlockTrace implements BlockListener {

  /** One scalar measurement that was folded in, as {@link BlockListener#observed} tells of it. */
  record Observation(int error, double[] gain, double variance, double innovation) {}

  /** One block: its model, its measurements, and what it ended with. */
  static final class Block {
    final boolean startsAnew;
    final BlockModel model = new BlockModel();
    final List<Observation> observations = new ArrayList<>(7);

    /** The first three rows of the covariance after the block, 3 x 19. */
    double[] turnRows = new double[3 * ERRORS];

    private double[] correction = new double[3];

    Block(boolean startsAnew) {
      this.startsAnew = startsAnew;
    }
  }

  private final List<Block> blocks = new ArrayList<>();
  private boolean released = true;

  /** Number of blocks recorded. */
  public int blocks() {
    return blocks.size();
  }

  Block block(int k) {
    return blocks.get(k);
  }

  private Block last() {
    return blocks.get(blocks.size() - 1);
  }

  @Override
  public void released() {
    released = true;
  }

  @Override
  public void predicted(BlockSums sums) {
    blocks.add(new Block(released));
    last().model.set(sums);
    released = false;
  }

  @Override
  public void observed(int error, double[] gain, double variance, double innovation) {
    last().observations.add(new Observation(error, gain.clone(), variance, innovation));
  }

  @Override
  public void corrected(double[] correction, double[] covariance) {
    last().turnRows = Arrays.copyOf(covariance, 3 * ERRORS);
    last().correction = Arrays.copyOf(correction, 3);
  }

  /** Whether tilt, velocity and place were unknown before the block. */
  public boolean startsAnew(int block) {
    return blocks.get(block).startsAnew;
  }

  /** What the forward pass turned the attitude by at the end of the block, component 0..2, rad. */
  public double correctionRad(int block, int axis) {
    return blocks.get(block).correction[axis];
  }
}

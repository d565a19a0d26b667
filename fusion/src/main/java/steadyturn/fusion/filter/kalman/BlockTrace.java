package steadyturn.fusion.filter.kalman;

import static steadyturn.fusion.filter.kalman.BlockModel.ERRORS;
import static steadyturn.fusion.filter.kalman.BlockModel.FIXED;

import java.util.ArrayList;
import java.util.List;

/**
 * Everything the backward pass needs of a forward pass, block by block, in arrays of many blocks
 * each. About 2 kB a block, 70 MB an hour.
 */
public final class BlockTrace implements BlockListener {

  static final int MOST_OBSERVATIONS = 7;
  private static final int OBSERVATION = ERRORS + 3;
  private static final int MODEL = 3 * FIXED + 5;
  private static final int TURN_ROWS = 3 * ERRORS;
  private static final int RECORD = MODEL + 1 + MOST_OBSERVATIONS * OBSERVATION + TURN_ROWS + 3;
  private static final int BLOCKS_A_PAGE = 256;

  private final List<double[]> pages = new ArrayList<>();
  private int blocks;
  private int observations;
  private boolean released;

  /** Number of blocks recorded. */
  public int blocks() {
    return blocks;
  }

  @Override
  public void released() {
    released = true;
  }

  @Override
  public void predicted(BlockModel model) {
    if (blocks % BLOCKS_A_PAGE == 0) {
      pages.add(new double[BLOCKS_A_PAGE * RECORD]);
    }
    blocks++;
    observations = 0;
    double[] page = page(blocks - 1);
    int at = at(blocks - 1);
    System.arraycopy(model.turnByFixed, 0, page, at, 3 * FIXED);
    page[at + 3 * FIXED] = model.velX;
    page[at + 3 * FIXED + 1] = model.velY;
    page[at + 3 * FIXED + 2] = model.velZ;
    page[at + 3 * FIXED + 3] = model.lengthS;
    page[at + 3 * FIXED + 4] = released || blocks == 1 ? 1 : 0;
    released = false;
  }

  @Override
  public void observed(int error, double[] gain, double variance, double innovation) {
    double[] page = page(blocks - 1);
    int at = at(blocks - 1) + MODEL;
    int here = at + 1 + observations * OBSERVATION;
    page[here] = error;
    page[here + 1] = variance;
    page[here + 2] = innovation;
    System.arraycopy(gain, 0, page, here + 3, ERRORS);
    observations++;
    page[at] = observations;
  }

  @Override
  public void corrected(double[] correction, double[] covariance) {
    double[] page = page(blocks - 1);
    int at = at(blocks - 1) + MODEL + 1 + MOST_OBSERVATIONS * OBSERVATION;
    System.arraycopy(covariance, 0, page, at, TURN_ROWS);
    System.arraycopy(correction, 0, page, at + TURN_ROWS, 3);
  }

  /** Fills the model of a block. */
  void readModel(int block, BlockModel model) {
    double[] page = page(block);
    int at = at(block);
    System.arraycopy(page, at, model.turnByFixed, 0, 3 * FIXED);
    model.velX = page[at + 3 * FIXED];
    model.velY = page[at + 3 * FIXED + 1];
    model.velZ = page[at + 3 * FIXED + 2];
    model.lengthS = page[at + 3 * FIXED + 3];
  }

  /** Whether tilt, velocity and place were unknown before the block. */
  public boolean startsAnew(int block) {
    return page(block)[at(block) + 3 * FIXED + 4] != 0;
  }

  int observations(int block) {
    return (int) page(block)[at(block) + MODEL];
  }

  int error(int block, int observation) {
    return (int) page(block)[observationAt(block, observation)];
  }

  double variance(int block, int observation) {
    return page(block)[observationAt(block, observation) + 1];
  }

  double innovation(int block, int observation) {
    return page(block)[observationAt(block, observation) + 2];
  }

  void readGain(int block, int observation, double[] gain) {
    System.arraycopy(page(block), observationAt(block, observation) + 3, gain, 0, ERRORS);
  }

  /** The first three rows of the covariance after the block, 3 x 19. */
  void readTurnRows(int block, double[] rows) {
    int at = at(block) + MODEL + 1 + MOST_OBSERVATIONS * OBSERVATION;
    System.arraycopy(page(block), at, rows, 0, TURN_ROWS);
  }

  /** What the forward pass turned the attitude by at the end of the block, component 0..2, rad. */
  public double correctionRad(int block, int axis) {
    return page(block)[at(block) + MODEL + 1 + MOST_OBSERVATIONS * OBSERVATION + TURN_ROWS + axis];
  }

  private static int observationAt(int block, int observation) {
    return at(block) + MODEL + 1 + observation * OBSERVATION;
  }

  private static int at(int block) {
    return block % BLOCKS_A_PAGE * RECORD;
  }

  private double[] page(int block) {
    return pages.get(block / BLOCKS_A_PAGE);
  }
}

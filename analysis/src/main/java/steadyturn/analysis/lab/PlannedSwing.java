package steadyturn.analysis.lab;

import steadyturn.analysis.swing.SwingKind;

/**
 * When a swing was laid on the stage, true times in s.
 *
 * @param startS first move
 * @param topS about the top of the hands
 * @param impactS club at the ball
 * @param endS last step ended
 * @param holdEndS the finish is left
 */
record PlannedSwing(
    SwingKind kind,
    String club,
    double startS,
    double topS,
    double impactS,
    double endS,
    double holdEndS) {}

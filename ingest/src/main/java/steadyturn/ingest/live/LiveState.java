package steadyturn.ingest.live;

import java.util.Optional;
import steadyturn.ingest.sample.BodyPoint;

/**
 * What people want to know of a unit while it runs.
 *
 * @param point where it is worn, where known
 * @param isKnown whether it said hello, or something is known of it otherwise
 * @param serialNumber empty while not known
 * @param isThere whether its port is open and read
 * @param trouble what is the matter, or empty
 * @param samples taken from it
 * @param kept those of them that are in the file
 * @param failures how often its adapter failed
 * @param rateHz samples of the last second
 * @param lost samples its counter missed
 * @param skippedBytes bytes that made no sense
 * @param unplugged how often it went
 * @param skewPpm its clock against the host's
 * @param clockSpreadS what that is worth
 */
public record LiveState(
    Optional<BodyPoint> point,
    boolean isKnown,
    String serialNumber,
    boolean isThere,
    String trouble,
    long samples,
    long kept,
    long failures,
    double rateHz,
    long lost,
    long skippedBytes,
    long unplugged,
    int restarts,
    double skewPpm,
    double clockSpreadS) {}

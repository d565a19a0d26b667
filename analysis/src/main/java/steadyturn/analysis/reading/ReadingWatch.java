package steadyturn.analysis.reading;

import steadyturn.ingest.sample.Offered;

/** Who is told how the reading of a lesson goes, and decides nothing. */
@Offered
public interface ReadingWatch {

  /** Something that may fail. */
  @FunctionalInterface
  interface Attempt {
    void run() throws Exception;
  }

  /** Does one thing; when it fails, reports it, remembers, and answers false. */
  boolean tried(Attempt attempt);

  /** Reports what could not be done, and remembers. */
  void failed(Exception failure);

  /** Tells what a reader should know; nothing failed. */
  void warn(String sentence);
}

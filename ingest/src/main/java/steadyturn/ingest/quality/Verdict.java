package steadyturn.ingest.quality;

/** What may be done with a unit's stream; later ones are worse. */
public enum Verdict {
  FIT("fit for use"),
  WIDER_INTERVALS("usable with wider intervals"),
  NOT_USABLE("not usable");

  private final String words;

  Verdict(String words) {
    this.words = words;
  }

  /** The verdict as people read it. */
  public String words() {
    return words;
  }

  /** The worse of the two. */
  public Verdict worse(Verdict other) {
    return compareTo(other) >= 0 ? this : other;
  }
}

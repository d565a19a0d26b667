package steadyturn.ingest.quality;

/**
 * One thing that was noticed.
 *
 * @param check what was looked at
 * @param verdict what it means for the unit; {@link Verdict#FIT} for a mere note
 * @param what one plain sentence with the figure
 * @param whatToDo one plain sentence
 */
public record Finding(Check check, Verdict verdict, String what, String whatToDo) {

  public Finding {
    if (what.isBlank() || whatToDo.isBlank()) {
      throw new IllegalArgumentException(check + ": a finding needs both of its sentences");
    }
  }
}
